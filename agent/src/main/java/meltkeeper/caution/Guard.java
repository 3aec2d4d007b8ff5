package meltkeeper.caution;

import java.util.OptionalDouble;

/**
 * What a hot end is held to.
 *
 * @param limitCelsius the least limit among the parts that are fitted, 0 to 600; empty when none of
 *     them has one
 * @param hotAboveCelsius hot means above it
 * @param idleNanos hot and without work for so long calls for care
 * @param silentNanos unheard for so long while hot or printing calls for care
 */
public record Guard(
    OptionalDouble limitCelsius, double hotAboveCelsius, long idleNanos, long silentNanos) {

  /** A temperature must fall so far below its limit before it counts as back in order. */
  public static final double HYSTERESIS_KELVIN = 5;

  public Guard {
    if (!(limitCelsius.orElse(0) >= 0 && limitCelsius.orElse(0) <= 600)) {
      throw new IllegalArgumentException("a limit is 0 to 600 °C, not " + limitCelsius);
    }
    if (idleNanos <= 0 || silentNanos <= 0) {
      throw new IllegalArgumentException(
          "times are above 0, not " + idleNanos + " ns and " + silentNanos + " ns");
    }
  }

  /** The same for other parts. */
  public Guard withLimit(OptionalDouble celsius) {
    return new Guard(celsius, hotAboveCelsius, idleNanos, silentNanos);
  }
}
