package meltkeeper.ledger;

import meltkeeper.protocol.Sample;

/**
 * A running total of filament, net of retractions. What was fed is the rise of its high-water mark.
 *
 * @param known false before the first reading
 * @param atNanos time of the last reading
 * @param lastMicrometres the total then
 * @param markMicrometres the highest total since the last restart
 */
record Filament(boolean known, long atNanos, long lastMicrometres, long markMicrometres) {

  static final Filament UNKNOWN = new Filament(false, Long.MIN_VALUE, 0, 0);

  /** A fall by more than this is a restart, not a retraction. */
  private static final long RESTART_MICROMETRES = 50_000;

  /** A total below this, after a fall by more than {@link #LONG_RETRACTION}, began anew. */
  private static final long NEAR_ZERO = 1_000;

  /** Above the longest retraction through a long tube (6 mm, common practice, no source). */
  private static final long LONG_RETRACTION = 10_000;

  /** In micrometres, exact for any total that a reading may hold. */
  static long micrometres(double millimetres) {
    return Math.round(millimetres * 1000);
  }

  Verdict verdict(Sample sample, long total) {
    if (!known || sample.atNanos() > atNanos) {
      return Verdict.TAKEN;
    }
    if (sample.atNanos() < atNanos) {
      return Verdict.LATE;
    }
    return sample.clock() == Sample.Clock.OWN || total == lastMicrometres
        ? Verdict.DUPLICATE
        : Verdict.TAKEN;
  }

  /** True when that total can only mean that the printer began to count anew. */
  boolean restartsAt(long total) {
    long fall = lastMicrometres - total;
    return known
        && (fall > RESTART_MICROMETRES || (fall > LONG_RETRACTION && Math.abs(total) < NEAR_ZERO));
  }

  /** What was fed up to that total. */
  long riseTo(long total) {
    return !known || restartsAt(total) ? 0 : Math.max(0, total - markMicrometres);
  }

  Filament at(long nanos, long total) {
    long mark = !known || restartsAt(total) ? total : Math.max(markMicrometres, total);
    return new Filament(true, nanos, total, mark);
  }

  /** The same total on a clock that was set back. */
  Filament onClockSetBackTo(long nanos) {
    return new Filament(known, Math.min(atNanos, nanos), lastMicrometres, markMicrometres);
  }
}
