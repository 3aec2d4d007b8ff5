package meltkeeper.alert;

import java.time.Duration;

/**
 * How much the outbox holds.
 *
 * @param keep for so long an episode that is over stays in the listings
 * @param mostWaiting on one route; beyond it the least and the oldest are given up
 */
public record OutboxLimits(Duration keep, int mostWaiting) {

  public static final OutboxLimits DEFAULT = new OutboxLimits(Duration.ofDays(90), 500);

  public OutboxLimits {
    if (keep.isNegative() || mostWaiting < 1) {
      throw new IllegalArgumentException(
          "an outbox keeps from 0 s and lets wait from 1, not " + keep + " and " + mostWaiting);
    }
  }
}
