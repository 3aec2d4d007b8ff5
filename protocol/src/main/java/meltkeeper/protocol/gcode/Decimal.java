package meltkeeper.protocol.gcode;

/**
 * A decimal number, gathered digit by digit without a string.
 *
 * <p>Form by RS274/NGC section 3.3.2.1: a sign or none, digits, a point or none, digits; at least
 * one digit. There are no exponents. The value is the nearest double as long as there are at most
 * 18 significant digits; further digits are cut off, as the report allows ("about seventeen").
 */
final class Decimal {

  private static final int KEPT_DIGITS = 18;
  private static final long EXACT_IN_DOUBLE = 1L << 53;
  private static final double[] POWERS_OF_TEN = powersOfTen();

  private long mantissa;
  private int kept;
  private int exponent;
  private int digits;
  private int decimals;
  private boolean negative;
  private boolean signed;
  private boolean pointed;

  void clear() {
    mantissa = 0;
    kept = 0;
    exponent = 0;
    digits = 0;
    decimals = 0;
    negative = false;
    signed = false;
    pointed = false;
  }

  /** Takes the next character; false, and nothing changed, when the number does not go on so. */
  boolean accept(int b) {
    if (Cursor.isDigit(b)) {
      digit(b - '0');
      return true;
    }
    if (b == '.' && !pointed) {
      pointed = true;
      return true;
    }
    if ((b == '-' || b == '+') && isEmpty()) {
      signed = true;
      negative = b == '-';
      return true;
    }
    return false;
  }

  private void digit(int digit) {
    digits++;
    if (pointed) {
      decimals++;
    }
    if (kept < KEPT_DIGITS) {
      mantissa = mantissa * 10 + digit;
      kept += mantissa == 0 ? 0 : 1;
      exponent -= pointed ? 1 : 0;
    } else {
      exponent += pointed ? 0 : 1;
    }
  }

  /** True when nothing was taken. */
  boolean isEmpty() {
    return digits == 0 && !signed && !pointed;
  }

  /** True when what was taken is a number. */
  boolean isComplete() {
    return digits > 0;
  }

  /** True for a number that ends in its point, as when the rest was lost. */
  boolean endsInPoint() {
    return pointed && decimals == 0;
  }

  /** True when there was no point. */
  boolean isInteger() {
    return digits > 0 && !pointed;
  }

  /** Number of digits taken. */
  int digits() {
    return digits;
  }

  /** True when a sign was taken. */
  boolean isSigned() {
    return signed;
  }

  /** Number of digits behind the point. */
  int decimals() {
    return decimals;
  }

  /** The value; infinite when it is beyond a double. */
  double value() {
    double magnitude = magnitude();
    return negative ? -magnitude : magnitude;
  }

  private double magnitude() {
    boolean exact = mantissa <= EXACT_IN_DOUBLE && Math.abs(exponent) < POWERS_OF_TEN.length;
    if (!exact) {
      return Double.parseDouble(mantissa + "E" + exponent);
    }
    // Both operands are exact, so that the one rounding gives the nearest double.
    return exponent < 0 ? mantissa / POWERS_OF_TEN[-exponent] : mantissa * POWERS_OF_TEN[exponent];
  }

  private static double[] powersOfTen() {
    double[] powers = new double[23];
    for (int i = 0; i < powers.length; i++) {
      powers[i] = Double.parseDouble("1E" + i);
    }
    return powers;
  }
}
