package meltkeeper.plot;

/**
 * One value and its range on a bar from 0 to a limit, small enough for a table's cell. What lies
 * beyond the limit shows beyond it; far beyond, an arrow stands for it.
 *
 * @param words its text alternative; no figure is printed in the plot itself
 * @param value not negative
 * @param low the lower end of its range, not negative
 * @param high the upper end, not below the lower one
 * @param limit above 0, in the unit of the value
 */
public record Gauge(Words words, double value, double low, double high, double limit)
    implements Plot {

  private static final double WIDTH = 120;
  private static final double HEIGHT = 16;
  private static final double MIDDLE = HEIGHT / 2;
  private static final double START = 1;
  private static final double LIMIT = 97;
  private static final double END = 118;

  public Gauge {
    String name = " of gauge \"" + words.title() + "\"";
    Check.notNegative("the value" + name, value);
    Check.notNegative("the low end" + name, low);
    Check.notNegative("the high end" + name, high);
    Check.notNegative("the limit" + name, limit);
    if (high < low) {
      throw new IllegalArgumentException(
          "the range" + name + " runs from " + low + " down to " + high + "; give low first");
    }
    if (limit == 0) {
      throw new IllegalArgumentException("the limit" + name + " is 0; allowed is more than 0");
    }
  }

  @Override
  public String svg() {
    Svg svg = Svg.small(words, WIDTH, HEIGHT);
    svg.area("plot-track", new Path().box(START, 3, LIMIT, 13), 0.2);
    if (value > 0) {
      String colour = value > limit ? "plot-over" : "plot-1";
      svg.area("plot-fill " + colour, new Path().box(START, 3, pixel(value), 13), 0.6);
    }
    svg.stroke("plot-limit", new Path().stroke(LIMIT, 0, LIMIT, HEIGHT), 2);
    svg.stroke("plot-range", range(), 1.5);
    return svg.end();
  }

  private Path range() {
    double from = pixel(low);
    double to = pixel(high);
    Path path = new Path().stroke(from, MIDDLE, to, MIDDLE).stroke(from, 5, from, 11);
    return to < END
        ? path.stroke(to, 5, to, 11)
        : path.stroke(END - 4, 4, END, MIDDLE).to(END - 4, 12);
  }

  private double pixel(double at) {
    return Math.min(END, new Scale(0, limit, START, LIMIT).at(at));
  }
}
