package meltkeeper.ledger;

import java.util.OptionalLong;

/**
 * What a hot end's account goes by.
 *
 * @param hotAboveCelsius the hot threshold, 0 to 600 °C; hot means above it, not at it
 * @param gapNanos the longest interval between two readings that is no gap, above 0; empty for the
 *     larger of 30 s and five times the usual period, which the account learns
 */
public record Limits(double hotAboveCelsius, OptionalLong gapNanos) {

  /** Hot threshold where none is given, °C. */
  public static final double DEFAULT_HOT_ABOVE_CELSIUS = 150;

  /** A gap is never bridged from this length on. */
  public static final long BRIDGE_LIMIT_NANOS = 12 * 3_600_000_000_000L;

  private static final long LEAST_GAP_NANOS = 30_000_000_000L;

  /** Limits where none are given. */
  public static final Limits DEFAULT = new Limits(DEFAULT_HOT_ABOVE_CELSIUS, OptionalLong.empty());

  public Limits {
    if (!(hotAboveCelsius >= 0 && hotAboveCelsius <= 600)) {
      throw new IllegalArgumentException(
          "the hot threshold is 0 to 600 degrees Celsius, not " + hotAboveCelsius);
    }
    if (gapNanos.isPresent() && gapNanos.getAsLong() <= 0) {
      throw new IllegalArgumentException("a gap limit is above 0, not " + gapNanos.getAsLong());
    }
  }

  boolean isHot(double celsius) {
    return celsius > hotAboveCelsius;
  }

  long gapNanos(long usualPeriodNanos) {
    return gapNanos.orElse(Math.max(LEAST_GAP_NANOS, 5 * usualPeriodNanos));
  }
}
