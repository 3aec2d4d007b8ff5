package meltkeeper.cli;

import java.util.List;
import meltkeeper.protocol.Fault;

/** What a person gave us is at fault; every fault is told. */
final class FaultsException extends RuntimeException {

  private final transient List<Fault> faults;

  FaultsException(List<Fault> faults) {
    super(faults.toString());
    this.faults = List.copyOf(faults);
  }

  List<Fault> faults() {
    return faults;
  }
}
