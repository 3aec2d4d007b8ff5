package meltkeeper.desk;

import java.time.ZoneId;
import java.util.List;
import java.util.OptionalLong;
import meltkeeper.part.Moments;
import meltkeeper.part.PartEvent;
import meltkeeper.protocol.Fault;

/**
 * The rules for the times that a shop tells.
 *
 * @param nowNanos the wall clock, nanoseconds since 1970
 */
record Timing(ZoneId zone, long nowNanos) {

  private static final long SECOND = 1_000_000_000L;
  private static final long MINUTE = 60 * SECOND;
  private static final long MILLISECOND = 1_000_000L;

  /** Two clocks in a shop may differ by this much. */
  private static final long SKEW = MINUTE;

  /** 2000-01-01T00:00Z: an earlier year is a slip of the finger. */
  private static final long EARLIEST = 946_684_800L * SECOND;

  /** The time told, else now; to the millisecond. */
  long of(OptionalLong told) {
    long nanos = told.orElse(nowNanos);
    return nanos - Math.floorMod(nanos, MILLISECOND);
  }

  /** The fault of a time that cannot be. */
  List<Fault> check(String key, long atNanos) {
    if (atNanos > nowNanos + SKEW) {
      return List.of(
          Fault.of(
              key,
              words(atNanos),
              "a time that is not in the future",
              "here it is " + words(nowNanos) + ", in zone " + zone));
    }
    return atNanos < EARLIEST
        ? List.of(Fault.of(key, words(atNanos), "a time since the year 2000"))
        : List.of();
  }

  /** The fault of a stay that ends before it begins, or in the future. */
  List<Fault> checkEnd(long fromNanos, long untilNanos) {
    return untilNanos > fromNanos
        ? check("until", untilNanos)
        : List.of(
            Fault.of("until", words(untilNanos), "a time after the fitting, " + words(fromNanos)));
  }

  /**
   * The events that a time as a person sees it may mean: at that instant, else within that second,
   * or within that minute when it names no second; the last event when no time is given.
   */
  static List<PartEvent> meant(List<PartEvent> events, OptionalLong told) {
    if (told.isEmpty()) {
      return events.isEmpty() ? List.of() : List.of(events.get(events.size() - 1));
    }
    long at = told.getAsLong();
    List<PartEvent> exact = within(events, at, 1);
    if (!exact.isEmpty()) {
      return exact;
    }
    return within(events, at, Math.floorMod(at, MINUTE) == 0 ? MINUTE : SECOND);
  }

  private static List<PartEvent> within(List<PartEvent> events, long from, long nanos) {
    return events.stream().filter(e -> e.atNanos() >= from && e.atNanos() - from < nanos).toList();
  }

  private String words(long nanos) {
    return Moments.words(nanos, zone);
  }
}
