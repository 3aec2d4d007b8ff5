package meltkeeper.cli.report;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.Instant;
import java.time.ZoneId;
import meltkeeper.desk.Report;
import meltkeeper.part.Moments;

/** Values as people read them. */
final class Shown {

  private static final BigDecimal SECONDS_AN_HOUR = BigDecimal.valueOf(3600);

  private Shown() {}

  /** Hours to the tenth. */
  static String hours(BigDecimal seconds) {
    return seconds.divide(SECONDS_AN_HOUR, 1, RoundingMode.HALF_UP).toPlainString();
  }

  /** To the tenth. */
  static String tenths(BigDecimal value) {
    return value.setScale(1, RoundingMode.HALF_UP).toPlainString();
  }

  /** Local date and time in the report's zone. */
  static String time(Instant at, Report report) {
    return Moments.words(Moments.nanos(at), ZoneId.of(report.zone()));
  }

  /** {@code jam}, {@code jam, not this part}. */
  static String because(Report.Swap swap) {
    return swap.because() + (swap.notThisPart() ? ", not this part" : "");
  }
}
