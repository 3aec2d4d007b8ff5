package meltkeeper.desk;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import meltkeeper.ledger.Tally;
import meltkeeper.part.Exposure;

/**
 * Facts about a hot end or a part in the shape that is promised to other programs: seconds and
 * millimetres to the thousandth, always with three decimals, so that equal facts print as equal
 * bytes.
 *
 * @param hotSeconds by band, coldest first
 */
public record TallyAnswer(
    Map<String, BigDecimal> hotSeconds,
    BigDecimal bridgedSeconds,
    BigDecimal unobservedSeconds,
    BigDecimal idleSeconds,
    BigDecimal printingSeconds,
    BigDecimal filamentCommandedMm,
    BigDecimal filamentMeasuredMm) {

  public TallyAnswer {
    hotSeconds = Collections.unmodifiableMap(new LinkedHashMap<>(hotSeconds));
  }

  /** The facts of a tally. */
  public static TallyAnswer of(Tally tally) {
    Map<String, BigDecimal> hot = new LinkedHashMap<>();
    tally
        .exposure()
        .bands()
        .forEach((band, heat) -> hot.put(Exposure.bandName(band), seconds(heat.nanos())));
    return new TallyAnswer(
        hot,
        seconds(tally.bridgedNanos()),
        seconds(tally.unobservedNanos()),
        seconds(tally.idleNanos()),
        seconds(tally.printingNanos()),
        BigDecimal.valueOf(tally.commandedMicrometres(), 3),
        BigDecimal.valueOf(tally.measuredMicrometres(), 3));
  }

  /** Seconds to the thousandth. */
  public static BigDecimal seconds(long nanos) {
    return BigDecimal.valueOf(nanos, 9).setScale(3, RoundingMode.HALF_UP);
  }
}
