package meltkeeper.plot;

import java.util.ArrayList;
import java.util.List;

/**
 * A curve, drawn straight from point to point; two points at one x make a step.
 *
 * @param name as the legend calls it
 * @param points 2 to 10,000 in the order of x
 */
public record Line(String name, List<Point> points) {

  public Line {
    Check.text("a line's name", name);
    points = List.copyOf(points);
    Check.count("the points of line \"" + name + "\"", points, 2, 10_000);
    for (int i = 1; i < points.size(); i++) {
      Check.order("line \"" + name + "\"", points.get(i - 1).x(), points.get(i).x());
    }
  }

  /** The curve through {@code (x[i], y[i])}. */
  public static Line of(String name, double[] x, double[] y) {
    Check.sameLength("line \"" + name + "\"", x, y);
    List<Point> points = new ArrayList<>();
    for (int i = 0; i < x.length; i++) {
      points.add(new Point(x[i], y[i]));
    }
    return new Line(name, points);
  }
}
