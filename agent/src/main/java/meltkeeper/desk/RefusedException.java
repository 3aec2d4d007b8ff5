package meltkeeper.desk;

import java.util.List;
import java.util.stream.Collectors;
import meltkeeper.protocol.Fault;

/** The desk did not do what was asked, and changed nothing; every fault is told. */
public final class RefusedException extends RuntimeException {

  private final transient List<Fault> faults;

  public RefusedException(List<Fault> faults) {
    super(faults.stream().map(Fault::toString).collect(Collectors.joining("\n")));
    this.faults = List.copyOf(faults);
  }

  /** What is wrong, at least one. */
  public List<Fault> faults() {
    return faults;
  }

  public static void when(List<Fault> faults) {
    if (!faults.isEmpty()) {
      throw new RefusedException(faults);
    }
  }
}
