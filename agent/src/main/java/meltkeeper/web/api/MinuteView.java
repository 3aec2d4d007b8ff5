package meltkeeper.web.api;

import java.math.BigDecimal;
import java.time.Instant;
import java.util.OptionalDouble;
import meltkeeper.part.Moments;
import meltkeeper.pipeline.Minute;

/**
 * One minute of a hot end as the API shows it.
 *
 * @param at its beginning
 * @param evidence the most that any detector had, 1 warns
 */
record MinuteView(
    Instant at,
    OptionalDouble celsius,
    OptionalDouble targetCelsius,
    BigDecimal filamentCommandedMm,
    BigDecimal filamentMeasuredMm,
    double evidence) {

  static MinuteView of(Minute minute) {
    return new MinuteView(
        Moments.instant(minute.fromNanos()),
        hundredths(minute.celsius()),
        minute.targetCelsius(),
        BigDecimal.valueOf(minute.commandedMicrometres(), 3),
        BigDecimal.valueOf(minute.measuredMicrometres(), 3),
        minute.evidence());
  }

  private static OptionalDouble hundredths(OptionalDouble value) {
    return value.isPresent()
        ? OptionalDouble.of(Math.round(value.getAsDouble() * 100) / 100.0)
        : value;
  }
}
