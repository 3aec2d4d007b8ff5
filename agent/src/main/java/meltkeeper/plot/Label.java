package meltkeeper.plot;

import java.util.List;

/** How much room a text takes, guessed: the server knows no fonts. */
final class Label {

  /** Height of the letters in pixels of the view box. */
  static final int SIZE = 12;

  /** Distance between the lines of a text. */
  static final int ROW = 17;

  /** A wide sans serif takes 0.6 of its size for a digit; most take less. */
  private static final double PER_CHARACTER = 0.6 * SIZE;

  private Label() {}

  static double width(String text) {
    return PER_CHARACTER * text.codePointCount(0, text.length());
  }

  static double widest(List<String> texts) {
    return texts.stream().mapToDouble(Label::width).max().orElse(0);
  }

  /** The text, or its beginning and an ellipsis, so that it fits the width. */
  static String fit(String text, double width) {
    if (width(text) <= width) {
      return text;
    }
    int kept = Math.max(0, (int) (width / PER_CHARACTER) - 1);
    return text.substring(0, text.offsetByCodePoints(0, kept)).stripTrailing() + "…";
  }
}
