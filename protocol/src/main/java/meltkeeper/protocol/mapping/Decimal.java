package meltkeeper.protocol.mapping;

/** The form of a number in decimal digits: {@code -12}, {@code 3.5}, {@code .5}, {@code 1.7E9}. */
final class Decimal {

  private Decimal() {}

  /** True for an optional sign, digits with at most one point, and an optional exponent. */
  static boolean isDecimal(String text) {
    int at = afterSign(text, 0);
    int whole = afterDigits(text, at);
    int digits = whole - at;
    at = whole;
    if (at < text.length() && text.charAt(at) == '.') {
      int fraction = afterDigits(text, at + 1);
      digits += fraction - at - 1;
      at = fraction;
    }
    if (digits == 0) {
      return false;
    }
    if (at < text.length() && (text.charAt(at) | 0x20) == 'e') {
      int exponent = afterSign(text, at + 1);
      at = afterDigits(text, exponent);
      if (at == exponent) {
        return false;
      }
    }
    return at == text.length();
  }

  static boolean isDigit(char c) {
    return c >= '0' && c <= '9';
  }

  private static int afterSign(String text, int at) {
    return at < text.length() && (text.charAt(at) == '-' || text.charAt(at) == '+') ? at + 1 : at;
  }

  private static int afterDigits(String text, int from) {
    int at = from;
    while (at < text.length() && isDigit(text.charAt(at))) {
      at++;
    }
    return at;
  }
}
