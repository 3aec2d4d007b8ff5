package meltkeeper.plot;

/**
 * Writes one {@code <svg>} element and escapes whatever it is given. Not thread-safe.
 *
 * <p>Title and description are its first children, where screen readers look for the text
 * alternative of {@code role="img"}. Everything is painted in {@code currentColor}, so that a class
 * need only set {@code color}, and the plot reads without any stylesheet.
 */
final class Svg {

  /** Which end of a text stands at its x. */
  enum Anchor {
    START,
    MIDDLE,
    END
  }

  /** On a wide page a pixel of the view box becomes this many. */
  private static final double ENLARGED = 1.35;

  private final StringBuilder written = new StringBuilder();

  /** A plot of a page; it grows to a comfortable size and shrinks with the page. */
  static Svg plot(Words words, double width, double height) {
    return new Svg("plot", words, width, height, ENLARGED);
  }

  /** A plot as high as a line of text. */
  static Svg small(Words words, double width, double height) {
    return new Svg("plot plot-small", words, width, height, 1);
  }

  private Svg(String classes, Words words, double width, double height, double enlarged) {
    written.append("<svg xmlns=\"http://www.w3.org/2000/svg\"");
    attribute("class", classes);
    attribute("role", "img");
    attribute("viewBox", "0 0 " + Digits.pixels(width) + " " + Digits.pixels(height));
    attribute("width", Digits.pixels(width * enlarged));
    attribute("height", Digits.pixels(height * enlarged));
    attribute("font-size", Integer.toString(Label.SIZE));
    attribute("fill", "currentColor");
    written.append('>');
    element("title", words.title());
    element("desc", words.description());
  }

  /** A line as wide as given, without a filling. */
  Svg stroke(String classes, Path path, double width) {
    return stroke(classes, path, width, "");
  }

  /**
   * A line with dashes.
   *
   * @param dashes as of {@code stroke-dasharray}; blank for a solid line
   */
  Svg stroke(String classes, Path path, double width, String dashes) {
    written.append("<path");
    attribute("class", classes);
    attribute("fill", "none");
    attribute("stroke", "currentColor");
    attribute("stroke-width", Digits.pixels(width));
    if (!dashes.isBlank()) {
      attribute("stroke-dasharray", dashes);
    }
    attribute("d", path.toString());
    written.append("/>");
    return this;
  }

  /**
   * A filled area.
   *
   * @param opacity 0 to 1, to the tenth
   */
  Svg area(String classes, Path path, double opacity) {
    written.append("<path");
    attribute("class", classes);
    attribute("fill-opacity", Digits.pixels(opacity));
    attribute("d", path.toString());
    written.append("/>");
    return this;
  }

  /** A text that is shortened to the room it has; the whole of it shows on hovering. */
  Svg text(String classes, double x, double y, Anchor anchor, String text, double room) {
    String fitting = Label.fit(text, room);
    written.append("<text");
    attribute("class", classes);
    attribute("x", Digits.pixels(x));
    attribute("y", Digits.pixels(y));
    if (anchor != Anchor.START) {
      attribute("text-anchor", anchor == Anchor.END ? "end" : "middle");
    }
    written.append('>');
    if (!fitting.equals(text)) {
      element("title", text);
    }
    written.append(Markup.escape(fitting)).append("</text>");
    return this;
  }

  /** The whole element. */
  String end() {
    return written + "</svg>";
  }

  private void element(String name, String text) {
    written.append('<').append(name).append('>');
    written.append(Markup.escape(text));
    written.append("</").append(name).append('>');
  }

  private void attribute(String name, String value) {
    written.append(' ').append(name).append("=\"").append(Markup.escape(value)).append('"');
  }
}
