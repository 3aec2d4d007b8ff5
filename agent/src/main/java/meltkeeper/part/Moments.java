package meltkeeper.part;

import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;

/** Instants as nanoseconds since 1970, and in words. */
public final class Moments {

  private static final DateTimeFormatter MINUTE = DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm");
  private static final DateTimeFormatter SECOND =
      DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm:ss");
  private static final long BILLION = 1_000_000_000L;

  private Moments() {}

  /**
   * Nanoseconds since 1970.
   *
   * @throws ArithmeticException outside the years 1678 to 2261
   */
  public static long nanos(Instant at) {
    return Math.addExact(Math.multiplyExact(at.getEpochSecond(), BILLION), at.getNano());
  }

  /** The instant. */
  public static Instant instant(long nanos) {
    return Instant.ofEpochSecond(Math.floorDiv(nanos, BILLION), Math.floorMod(nanos, BILLION));
  }

  /** Local date and time, {@code 2026-03-02 08:00}, with seconds where they are not zero. */
  public static String words(long nanos, ZoneId zone) {
    var local = instant(nanos).atZone(zone);
    return (local.getSecond() == 0 ? MINUTE : SECOND).format(local);
  }
}
