package meltkeeper.source;

import java.time.Duration;
import java.util.random.RandomGenerator;

/**
 * How long to wait before the next try: each pause up to twice the one before it, to a limit, and
 * for ever. A pause is drawn evenly from the upper half of its range, so that a shop's agents and
 * printers do not all come back in the same moment after a power cut. Not safe for use by several
 * threads.
 */
public final class Backoff {

  private final Duration first;
  private final Duration longest;
  private final RandomGenerator random;
  private Duration range;

  /**
   * @param first the longest that the first pause can be, positive
   * @param longest the longest that any pause can be, not under {@code first}
   */
  public Backoff(Duration first, Duration longest, RandomGenerator random) {
    if (first.isNegative() || first.isZero() || longest.compareTo(first) < 0) {
      throw new IllegalArgumentException(
          "pauses from " + first + " to " + longest + "; allowed: above zero and rising");
    }
    this.first = first;
    this.longest = longest;
    this.random = random;
    this.range = first;
  }

  /** The next pause. */
  public Duration next() {
    long nanos = range.toNanos();
    Duration pause = Duration.ofNanos(nanos - (long) (random.nextDouble() * nanos / 2));
    Duration doubled = range.multipliedBy(2);
    range = doubled.compareTo(longest) < 0 ? doubled : longest;
    return pause;
  }

  /** Begins anew, after all went well for a while. */
  public void reset() {
    range = first;
  }
}
