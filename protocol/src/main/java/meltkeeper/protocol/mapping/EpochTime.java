package meltkeeper.protocol.mapping;

import meltkeeper.protocol.IsoTime;

/**
 * A decimal number of seconds or milliseconds since 1970, to the nanosecond.
 *
 * <p>The digits are counted out one by one: a {@code double} near 1.7e9 seconds is 240 ns coarse,
 * and would shorten or lengthen the hot time between two readings.
 */
final class EpochTime {

  /** Beyond any exponent that matters for the nanoseconds of two centuries. */
  private static final int MAX_EXPONENT = 10_000;

  private EpochTime() {}

  /**
   * The nanoseconds of a number, what is finer cut off.
   *
   * @param power 9 for seconds, 6 for milliseconds
   * @return 0 or more, or {@link IsoTime#NOT_A_TIME} or {@link IsoTime#OUT_OF_RANGE}
   */
  static long nanos(String text, int power) {
    if (!Decimal.isDecimal(text)) {
      return IsoTime.NOT_A_TIME;
    }
    int mantissaEnd = mantissaEnd(text);
    int point = text.indexOf('.');
    int from = Decimal.isDigit(text.charAt(0)) || point == 0 ? 0 : 1;
    int wholeDigits = (point < 0 ? mantissaEnd : point) - from;
    int wanted = wholeDigits + exponent(text, mantissaEnd) + power;
    long nanos = 0;
    boolean zero = true;
    for (int at = from, taken = 0; at < mantissaEnd; at++) {
      if (at == point) {
        continue;
      }
      int digit = text.charAt(at) - '0';
      zero &= digit == 0;
      if (taken++ < wanted) {
        nanos = shifted(nanos, digit);
      }
      if (nanos < 0) {
        return IsoTime.OUT_OF_RANGE;
      }
    }
    int digits = mantissaEnd - from - (point < 0 ? 0 : 1);
    for (int missing = wanted - digits; missing > 0 && nanos > 0; missing--) {
      nanos = shifted(nanos, 0);
    }
    boolean negative = text.charAt(0) == '-' && !zero;
    return negative || nanos < 0 ? IsoTime.OUT_OF_RANGE : nanos;
  }

  /** One digit more, or negative when that leaves the range. */
  private static long shifted(long nanos, int digit) {
    return nanos > (Long.MAX_VALUE - digit) / 10 ? -1 : nanos * 10 + digit;
  }

  private static int mantissaEnd(String text) {
    for (int at = 0; at < text.length(); at++) {
      if ((text.charAt(at) | 0x20) == 'e') {
        return at;
      }
    }
    return text.length();
  }

  private static int exponent(String text, int mantissaEnd) {
    int exponent = 0;
    boolean negative = false;
    for (int at = mantissaEnd + 1; at < text.length(); at++) {
      char c = text.charAt(at);
      if (Decimal.isDigit(c)) {
        exponent = Math.min(MAX_EXPONENT, exponent * 10 + c - '0');
      } else {
        negative = c == '-';
      }
    }
    return negative ? -exponent : exponent;
  }
}
