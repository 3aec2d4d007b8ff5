package meltkeeper.pipeline;

import meltkeeper.protocol.Sample;

/**
 * How far a hot end's readings lie behind their arrival, and whether that is their age or only a
 * printer's clock that is wrong. A backlog catches up; a wrong clock stays as wrong as it is.
 *
 * @param nanos arrival less the reading's own time, when it was last noted
 * @param sinceNanos the arrival at which it was noted
 */
record Lag(long nanos, long sinceNanos) {

  /** Lags that differ by less are the same. */
  static final long SAME_NANOS = 60_000_000_000L;

  /** A lag that stays the same for so long is a wrong clock. */
  static final long SETTLED_NANOS = 120_000_000_000L;

  static Lag of(Sample sample) {
    return new Lag(sample.arrivalNanos() - sample.atNanos(), sample.arrivalNanos());
  }

  Lag next(Sample sample) {
    Lag now = of(sample);
    return Math.abs(now.nanos - nanos) < SAME_NANOS ? this : now;
  }

  /** True for a reading that is too old to call anybody. */
  boolean isPast(Sample sample, long oldNanos) {
    return nanos > oldNanos && sample.arrivalNanos() - sinceNanos < SETTLED_NANOS;
  }
}
