package meltkeeper.cli.outlook;

import java.util.Locale;
import java.util.OptionalDouble;
import meltkeeper.life.Estimate;

/** Numbers as a shop owner reads them. */
public final class Words {

  private Words() {}

  /** {@code 12 %}, {@code 3.4 %}, {@code under 0.1 %}. */
  public static String percent(double share) {
    double percent = 100 * share;
    if (percent > 0 && percent < 0.1) {
      return "under 0.1 %";
    }
    return String.format(Locale.ROOT, percent < 9.95 ? "%.1f %%" : "%.0f %%", percent);
  }

  /** The same, a dash for what is not known. */
  static String percent(OptionalDouble share) {
    return share.isPresent() ? percent(share.getAsDouble()) : "-";
  }

  /** {@code 6.5} or {@code 612}. */
  public static String number(double value) {
    return String.format(Locale.ROOT, value < 99.5 ? "%.1f" : "%.0f", value);
  }

  /** {@code 612 h, very likely 480 to 790 h}. */
  static String range(Estimate estimate, String unit) {
    return number(estimate.p50())
        + " "
        + unit
        + ", very likely "
        + number(estimate.p5())
        + " to "
        + number(estimate.p95())
        + " "
        + unit;
  }

  /** {@code 1 part}, {@code 8 parts}. */
  static String count(int number, String noun) {
    return number + " " + noun + (number == 1 ? "" : "s");
  }

  /** {@code 34.78 EUR}. */
  static String money(double amount, String currency) {
    return String.format(Locale.ROOT, "%.2f %s", amount, currency).strip();
  }
}
