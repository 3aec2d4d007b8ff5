package meltkeeper.web.api;

import java.util.List;
import meltkeeper.desk.RefusedException;
import meltkeeper.protocol.Fault;

/** The path names something that is not there. */
final class UnknownException extends RuntimeException {

  private final transient List<Fault> faults;

  UnknownException(List<Fault> faults) {
    super(new RefusedException(faults).getMessage());
    this.faults = List.copyOf(faults);
  }

  List<Fault> faults() {
    return faults;
  }
}
