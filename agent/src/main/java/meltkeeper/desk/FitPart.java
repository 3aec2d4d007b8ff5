package meltkeeper.desk;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import meltkeeper.part.Because;
import meltkeeper.part.PriorPast;
import meltkeeper.protocol.Fault;

/**
 * A part goes on a hot end.
 *
 * @param at when, nanoseconds since 1970; empty for now
 * @param past what it had run elsewhere before
 * @param off when and why it came off again, for a stay that is over
 */
public record FitPart(
    String id,
    String printer,
    int hotEnd,
    OptionalLong at,
    Optional<Past> past,
    Optional<Off> off) {

  /**
   * A past as it was told, not yet checked.
   *
   * @param hours hot hours
   * @param spreadHours how far off they may be, one standard deviation
   * @param celsius at which they were run
   */
  public record Past(double hours, double spreadHours, double celsius) {

    List<Fault> faults() {
      return PriorPast.faults(hours, spreadHours, celsius);
    }

    PriorPast checked() {
      return new PriorPast(hours, spreadHours, celsius);
    }
  }

  /** The end of a stay. */
  public record Off(long atNanos, Because because, boolean notThisPart) {}

  List<Fault> faults() {
    List<Fault> faults = new ArrayList<>();
    past.ifPresent(p -> faults.addAll(p.faults()));
    return faults;
  }
}
