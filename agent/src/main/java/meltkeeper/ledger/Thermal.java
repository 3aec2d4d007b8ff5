package meltkeeper.ledger;

import java.util.ArrayList;
import java.util.List;
import meltkeeper.protocol.Reading.HotEndTemperature;
import meltkeeper.protocol.Sample;

/**
 * The temperature's side of an account: the last reading that counts, what is known of the time
 * since, and readings that may mean that the printer's clock was set back.
 *
 * @param last the last reading that counts; empty before the first
 * @param usualPeriodNanos between readings, learned; 0 before the second
 * @param targetIsCold true when the target now in force is at or below the threshold
 * @param coldSaidNanos when something first said, since the last reading, that the hot end was
 *     cold; {@link Long#MAX_VALUE} for never
 * @param fed true when filament was fed since the last reading
 * @param undecidedGapNanos a gap, cold at both ends, of which the next filament reading tells
 *     whether it is unobserved; 0 for none
 * @param suspects late readings in a row that may be those of a clock set back
 */
record Thermal(
    List<Point> last,
    long usualPeriodNanos,
    boolean targetIsCold,
    long coldSaidNanos,
    boolean fed,
    long undecidedGapNanos,
    List<Point> suspects) {

  static final Thermal UNKNOWN =
      new Thermal(List.of(), 0, false, Long.MAX_VALUE, false, 0, List.of());

  private static final long LONGEST_FIRST_PERIOD_NANOS = 60_000_000_000L;
  private static final long LONGEST_PERIOD_NANOS = 600_000_000_000L;
  private static final int MANY = 5;

  /** A temperature and when. */
  record Point(long atNanos, long arrivalNanos, double celsius) {
    static Point of(HotEndTemperature reading) {
      return new Point(
          reading.sample().atNanos(), reading.sample().arrivalNanos(), reading.celsius());
    }
  }

  boolean isUnknown() {
    return last.isEmpty();
  }

  Point lastPoint() {
    return last.get(0);
  }

  /** The state after a reading that counts; what it ends is credited beforehand. */
  Thermal at(Point point) {
    return new Thermal(
        List.of(point),
        isUnknown() ? 0 : learned(point.atNanos() - lastPoint().atNanos()),
        targetIsCold,
        targetIsCold ? point.atNanos() : Long.MAX_VALUE,
        false,
        undecidedGapNanos,
        List.of());
  }

  /**
   * The usual period follows the intervals by a factor of two at most each, so that a gap moves it
   * little and a change of rate is learned within a few readings.
   */
  private long learned(long intervalNanos) {
    if (usualPeriodNanos == 0) {
      return Math.min(intervalNanos, LONGEST_FIRST_PERIOD_NANOS);
    }
    long held = Math.max(usualPeriodNanos / 2, Math.min(usualPeriodNanos * 2, intervalNanos));
    return Math.min(held, LONGEST_PERIOD_NANOS);
  }

  /** The gap limit for an interval that ends now; the first interval is its own usual period. */
  long gapNanos(Limits limits, long intervalNanos) {
    return limits.gapNanos(
        usualPeriodNanos == 0
            ? Math.min(intervalNanos, LONGEST_FIRST_PERIOD_NANOS)
            : usualPeriodNanos);
  }

  Thermal target(boolean cold, long atNanos) {
    return new Thermal(
        last,
        usualPeriodNanos,
        cold,
        cold ? Math.min(coldSaidNanos, atNanos) : coldSaidNanos,
        fed,
        undecidedGapNanos,
        suspects);
  }

  /** Something says that the hot end was cold at some time since the last reading. */
  Thermal wasCold() {
    return new Thermal(
        last,
        usualPeriodNanos,
        targetIsCold,
        isUnknown() ? coldSaidNanos : lastPoint().atNanos(),
        fed,
        undecidedGapNanos,
        suspects);
  }

  Thermal fedNow() {
    return new Thermal(last, usualPeriodNanos, targetIsCold, coldSaidNanos, true, 0, suspects);
  }

  Thermal undecided(long gapNanos) {
    return undecidedGapNanos == gapNanos
        ? this
        : new Thermal(last, usualPeriodNanos, targetIsCold, coldSaidNanos, fed, gapNanos, suspects);
  }

  /**
   * Notes a reading that is not later than the last one. A printer's clock was set back when many
   * such readings come in order, spaced as their arrivals, while arrivals go on.
   */
  Thermal suspecting(Point point, Sample.Clock clock) {
    if (clock != Sample.Clock.OWN || point.arrivalNanos() <= lastPoint().arrivalNanos()) {
      return this;
    }
    List<Point> row = new ArrayList<>();
    if (!suspects.isEmpty() && isNext(suspects.get(suspects.size() - 1), point)) {
      row.addAll(suspects.size() < MANY ? suspects : suspects.subList(1, MANY));
    }
    row.add(point);
    return new Thermal(
        last,
        usualPeriodNanos,
        targetIsCold,
        coldSaidNanos,
        fed,
        undecidedGapNanos,
        List.copyOf(row));
  }

  private static boolean isNext(Point before, Point after) {
    return after.atNanos() > before.atNanos() && after.arrivalNanos() > before.arrivalNanos();
  }

  /** True when the suspects make it certain that the clock was set back. */
  boolean clockWasSetBack() {
    if (suspects.size() < MANY) {
      return false;
    }
    Point first = suspects.get(0);
    Point latest = suspects.get(suspects.size() - 1);
    double own = latest.atNanos() - first.atNanos();
    double arrived = latest.arrivalNanos() - first.arrivalNanos();
    return Math.abs(own - arrived) <= 0.25 * Math.max(own, arrived);
  }
}
