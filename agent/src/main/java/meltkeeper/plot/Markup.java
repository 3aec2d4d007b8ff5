package meltkeeper.plot;

/** Text made safe for XML, and thereby for HTML. */
final class Markup {

  private Markup() {}

  /** The text for an element or a quoted attribute; what XML 1.0 forbids becomes U+FFFD. */
  static String escape(String text) {
    StringBuilder safe = new StringBuilder(text.length());
    text.codePoints().forEach(character -> append(safe, character));
    return safe.toString();
  }

  private static void append(StringBuilder safe, int character) {
    switch (character) {
      case '&' -> safe.append("&amp;");
      case '<' -> safe.append("&lt;");
      case '>' -> safe.append("&gt;");
      case '"' -> safe.append("&quot;");
      case '\'' -> safe.append("&#39;");
      default -> safe.appendCodePoint(isAllowed(character) ? character : 0xFFFD);
    }
  }

  /** The production {@code Char} of XML 1.0, section 2.2. */
  private static boolean isAllowed(int character) {
    return character == '\t'
        || character == '\n'
        || character == '\r'
        || (character >= 0x20 && character <= 0xD7FF)
        || (character >= 0xE000 && character <= 0xFFFD)
        || character >= 0x10000;
  }
}
