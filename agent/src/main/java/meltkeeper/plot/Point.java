package meltkeeper.plot;

/**
 * A point of a line, in the units of the axes.
 *
 * @param x across
 * @param y up
 */
public record Point(double x, double y) {

  public Point {
    Check.number("a point's x", x);
    Check.number("the y at x " + x, y);
  }
}
