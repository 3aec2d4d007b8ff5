package meltkeeper.protocol.gcode;

import java.nio.charset.StandardCharsets;

/** A place in a line's bytes; letters match in either case. */
final class Cursor {

  /** What {@link #peek()} tells at the end of the line. */
  static final int END = -1;

  private final byte[] bytes;
  private final int end;
  private int at;

  Cursor(byte[] bytes) {
    this(bytes, bytes.length);
  }

  /** Reads only as far as the given end. */
  Cursor(byte[] bytes, int end) {
    this.bytes = bytes;
    this.end = trimmedEnd(bytes, end);
  }

  private static int trimmedEnd(byte[] bytes, int limit) {
    int end = limit;
    while (end > 0 && (isBlank(bytes[end - 1]) || isLineEnd(bytes[end - 1]))) {
      end--;
    }
    return end;
  }

  int position() {
    return at;
  }

  void moveTo(int position) {
    at = position;
  }

  boolean atEnd() {
    return at >= end;
  }

  /** The byte here, a letter in upper case, or {@link #END}. */
  int peek() {
    return peek(0);
  }

  /** The byte some places ahead. */
  int peek(int ahead) {
    return at + ahead < end ? upper(bytes[at + ahead]) : END;
  }

  void skip() {
    at++;
  }

  void skipToEnd() {
    at = end;
  }

  void skipBlanks() {
    while (at < end && isBlank(bytes[at])) {
      at++;
    }
  }

  /** Steps over the text, given in upper case, if it stands here. */
  boolean take(String text) {
    for (int i = 0; i < text.length(); i++) {
      if (peek(i) != text.charAt(i)) {
        return false;
      }
    }
    at += text.length();
    return true;
  }

  /** Steps over one character if it stands here. */
  boolean take(char character) {
    if (peek() != character) {
      return false;
    }
    at++;
    return true;
  }

  /** Reads a number without blanks inside; stays where it is if there is none. */
  boolean takeNumber(Decimal number) {
    number.clear();
    int start = at;
    while (at < end && number.accept(bytes[at])) {
      at++;
    }
    if (!number.isComplete()) {
      at = start;
      return false;
    }
    return true;
  }

  /** Reads a whole number without a sign; -1 if there is none, or one of more than 15 digits. */
  long takeCount() {
    int start = at;
    long count = 0;
    while (isDigit(peek()) && at - start <= 15) {
      count = count * 10 + (bytes[at++] - '0');
    }
    return at > start && at - start <= 15 ? count : -1;
  }

  /** Reads a number that may have blanks inside; {@code number} tells what came of it. */
  void takeLooseNumber(Decimal number) {
    number.clear();
    while (at < end && (isBlank(bytes[at]) || number.accept(bytes[at]))) {
      at++;
    }
  }

  /** The text from here to the end, blanks at its ends left out. */
  String rest() {
    return new String(bytes, at, Math.max(0, end - at), StandardCharsets.UTF_8).strip();
  }

  /** The whole line for a message to a person. */
  String line() {
    return new String(bytes, StandardCharsets.UTF_8);
  }

  static boolean isLineEnd(int b) {
    return b == '\r' || b == '\n';
  }

  static boolean isBlank(int b) {
    return b == ' ' || b == '\t';
  }

  static boolean isDigit(int b) {
    return b >= '0' && b <= '9';
  }

  static boolean isLetter(int b) {
    return b >= 'A' && b <= 'Z';
  }

  private static int upper(byte b) {
    return b >= 'a' && b <= 'z' ? b - 32 : b & 0xff;
  }
}
