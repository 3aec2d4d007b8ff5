package meltkeeper.protocol.gcode;

/**
 * The checksum at the end of a command line: an asterisk and the exclusive or of all bytes before
 * it, in decimal (RepRap dialect, common practice, no source).
 */
final class Checksum {

  private static final int NONE = -1;

  private final int endOfWords;
  private final int told;
  private final int computed;

  private Checksum(int endOfWords, int told, int computed) {
    this.endOfWords = endOfWords;
    this.told = told;
    this.computed = computed;
  }

  /**
   * Finds the checksum of a line. Behind it a comment may stand. Within a comment an asterisk is a
   * checksum only on a numbered line, where the checksum covers the comment too.
   */
  static Checksum of(byte[] bytes) {
    Checksum ofAll = upTo(bytes, bytes.length);
    int end = endOfCode(bytes);
    return (isNumbered(bytes) && ofAll.told != NONE) || end == bytes.length
        ? ofAll
        : upTo(bytes, end);
  }

  private static Checksum upTo(byte[] bytes, int end) {
    int asterisk = lastAsterisk(bytes, end);
    int told = asterisk == NONE ? NONE : numberBetween(bytes, asterisk + 1, end);
    return told == NONE
        ? new Checksum(endOfCode(bytes), NONE, NONE)
        : new Checksum(Math.min(asterisk, endOfCode(bytes)), told, xor(bytes, asterisk));
  }

  private static int numberBetween(byte[] bytes, int from, int to) {
    int number = NONE;
    for (int i = from; i < to; i++) {
      if (Cursor.isDigit(bytes[i])) {
        number = Math.min(1_000, Math.max(0, number) * 10 + bytes[i] - '0');
      } else if (!Cursor.isBlank(bytes[i]) && !Cursor.isLineEnd(bytes[i])) {
        return NONE;
      }
    }
    return number;
  }

  private static boolean isNumbered(byte[] bytes) {
    Cursor line = new Cursor(bytes);
    line.skipBlanks();
    return line.take('N');
  }

  /** Index after the last byte that is neither checksum nor comment behind a semicolon. */
  int endOfWords() {
    return endOfWords;
  }

  /** True when there is no checksum, or the right one. */
  boolean isRight() {
    return told == computed;
  }

  int told() {
    return told;
  }

  int computed() {
    return computed;
  }

  private static int endOfCode(byte[] bytes) {
    boolean inComment = false;
    for (int i = 0; i < bytes.length; i++) {
      if (bytes[i] == '(' || bytes[i] == ')') {
        inComment = bytes[i] == '(';
      } else if (bytes[i] == ';' && !inComment) {
        return i;
      }
    }
    return bytes.length;
  }

  private static int lastAsterisk(byte[] bytes, int end) {
    for (int i = end - 1; i >= 0; i--) {
      if (bytes[i] == '*') {
        return i;
      }
    }
    return NONE;
  }

  private static int xor(byte[] bytes, int end) {
    int sum = 0;
    for (int i = 0; i < end; i++) {
      sum ^= bytes[i];
    }
    return sum & 0xff;
  }
}
