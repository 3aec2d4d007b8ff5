package meltkeeper.plot;

/** The {@code d} of a path, absolute coordinates to the tenth of a pixel. Not thread-safe. */
final class Path {

  private final StringBuilder written = new StringBuilder();

  /** On to the next point; the first one begins the path. */
  Path to(double x, double y) {
    return step(written.length() == 0 ? 'M' : 'L', x, y);
  }

  Path stroke(double x1, double y1, double x2, double y2) {
    return step('M', x1, y1).step('L', x2, y2);
  }

  Path box(double left, double top, double right, double bottom) {
    return stroke(left, top, right, top).to(right, bottom).to(left, bottom).close();
  }

  Path close() {
    written.append('Z');
    return this;
  }

  private Path step(char command, double x, double y) {
    written.append(command).append(Digits.pixels(x)).append(' ').append(Digits.pixels(y));
    return this;
  }

  @Override
  public String toString() {
    return written.toString();
  }
}
