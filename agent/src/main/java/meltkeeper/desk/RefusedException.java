package meltkeeper.desk;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import meltkeeper.protocol.Fault;

/**
 * The desk did not do what was asked, and changed nothing; the first twenty faults are told, and
 * how many more there are.
 */
public final class RefusedException extends RuntimeException {

  private static final int MOST = 20;

  private final transient List<Fault> faults;

  public RefusedException(List<Fault> faults) {
    super(first(faults).stream().map(Fault::toString).collect(Collectors.joining("\n")));
    this.faults = first(faults);
  }

  private static List<Fault> first(List<Fault> faults) {
    if (faults.size() <= MOST) {
      return List.copyOf(faults);
    }
    List<Fault> first = new ArrayList<>(faults.subList(0, MOST));
    first.add(Fault.of("", faults.size() - MOST + " faults more", "none", "mend these first"));
    return List.copyOf(first);
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
