package meltkeeper.ledger;

import meltkeeper.protocol.HotEnd;

/**
 * The facts of one short stretch of a hot end's time. Stretches are five minutes long, or shorter
 * where a part was fitted or taken off within. Stored buckets may overlap after a clock was set
 * back; their sum is what counts.
 *
 * @param fromNanos where it begins
 * @param untilNanos where it ends, exclusive
 */
public record Bucket(HotEnd hotEnd, long fromNanos, long untilNanos, Tally tally) {

  /** Length of a whole bucket. */
  public static final long LENGTH_NANOS = 300_000_000_000L;

  public Bucket {
    if (!(fromNanos < untilNanos)) {
      throw new IllegalArgumentException(
          "a bucket ends after it begins, not from " + fromNanos + " to " + untilNanos);
    }
  }

  /**
   * What of it falls before {@code cutNanos}, in proportion to time; nothing before its beginning,
   * all of it after its end.
   */
  public Tally before(long cutNanos) {
    if (cutNanos <= fromNanos) {
      return Tally.NONE;
    }
    return cutNanos >= untilNanos
        ? tally
        : tally.share(cutNanos - fromNanos, untilNanos - fromNanos);
  }

  /**
   * What of it falls from {@code fromCut} (inclusive) to {@code untilCut}. Neighbouring cuts share
   * the bucket without loss: {@code within(a, b) + within(b, c) = within(a, c)}.
   */
  public Tally within(long fromCut, long untilCut) {
    return before(untilCut).minus(before(fromCut));
  }
}
