package meltkeeper.plot;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.stream.DoubleStream;

/** Numbers as printed, with no more digits than the eye can use. */
final class Digits {

  private Digits() {}

  /** A coordinate to the tenth of a pixel. */
  static String pixels(double value) {
    BigDecimal tenths = BigDecimal.valueOf(Math.round(value * 10), 1);
    return tenths.stripTrailingZeros().toPlainString();
  }

  /** A tick with the digits of its step; in powers of ten where it would not fit. */
  static String tick(BigDecimal value) {
    BigDecimal bare = value.stripTrailingZeros();
    boolean isLong = value.scale() > 4 || bare.scale() < -5;
    return (isLong ? scientific(bare) : value.toPlainString()).replace('-', '\u2212');
  }

  private static String scientific(BigDecimal value) {
    int power = value.precision() - value.scale() - 1;
    return value.signum() == 0 ? "0" : value.movePointLeft(power).toPlainString() + "e" + power;
  }

  /** Digits after the point that show three figures of the largest value, and none needlessly. */
  static int decimals(DoubleStream values) {
    double largest = values.max().orElse(0);
    return largest > 0 ? Math.max(0, 2 - (int) Math.floor(Math.log10(largest))) : 0;
  }

  /** A value that is not negative; one too small to show is printed as below the last digit. */
  static String value(double value, int decimals) {
    BigDecimal rounded = BigDecimal.valueOf(value).setScale(decimals, RoundingMode.HALF_UP);
    return rounded.signum() == 0 && value > 0
        ? "<" + BigDecimal.ONE.movePointLeft(decimals).toPlainString()
        : rounded.toPlainString();
  }
}
