package meltkeeper.plot;

import java.util.stream.IntStream;

/**
 * Where things stand in a line plot. From the top: legend, the y axis' title, the mark's label, the
 * area of the curves, a lane for each rug, the x axis with its ticks, its title.
 *
 * @param xTicks the ticks across
 * @param yTicks the ticks up
 * @param legend above all
 * @param left of the area
 * @param right of the area
 * @param top of the area
 * @param bottom of the area, where the lanes begin
 * @param floor the x axis
 */
record LineFrame(
    Ticks xTicks,
    Ticks yTicks,
    Legend legend,
    double left,
    double right,
    double top,
    double bottom,
    double floor) {

  static final double WIDTH = 340;
  static final double PAD = 4;

  private static final double AREA = 180;
  private static final double LANE = 13;
  private static final double APART = 14;
  private static final double ABOVE = 8;
  private static final int WANTED_UP = 5;
  private static final int MOST_ACROSS = 10;

  static LineFrame of(LinePlot plot, Legend legend) {
    Ticks y = Ticks.over(plot.y().with(plot.upValues()), WANTED_UP);
    double left = PAD + Label.widest(y.labels()) + 6;
    Ticks x = fitting(plot, WIDTH - PAD - left);
    double labelRows = plot.mark().isPresent() ? 2 : 1;
    double top = PAD + legend.height() + labelRows * Label.ROW + ABOVE;
    double bottom = top + AREA;
    return new LineFrame(
        x,
        y,
        legend,
        left,
        WIDTH - PAD - Label.widest(x.labels()) / 2,
        top,
        bottom,
        bottom + LANE * plot.rugs().size());
  }

  /** As many ticks as stand apart: more of them leave less of the axis without data. */
  private static Ticks fitting(LinePlot plot, double width) {
    return IntStream.iterate(MOST_ACROSS, wanted -> wanted - 1)
        .limit(MOST_ACROSS - 1)
        .mapToObj(wanted -> Ticks.over(plot.x().with(plot.acrossValues()), wanted))
        .filter(ticks -> (Label.widest(ticks.labels()) + APART) * ticks.values().size() <= width)
        .findFirst()
        .orElseGet(() -> Ticks.over(plot.x().with(plot.acrossValues()), 2));
  }

  Scale across() {
    return new Scale(xTicks.first(), xTicks.last(), left, right);
  }

  Scale up() {
    return new Scale(yTicks.first(), yTicks.last(), bottom, top);
  }

  /** The middle of a rug's lane, the first on top. */
  double lane(int index) {
    return bottom + LANE * (index + 0.5);
  }

  double height() {
    return floor + 2 * Label.ROW + PAD;
  }
}
