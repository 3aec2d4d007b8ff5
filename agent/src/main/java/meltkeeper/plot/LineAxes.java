package meltkeeper.plot;

import java.util.List;

/**
 * Draws the grid, the ticks and the titles of a line plot.
 *
 * @param plot whose
 * @param frame where
 */
record LineAxes(LinePlot plot, LineFrame frame) {

  void draw(Svg svg) {
    grid(svg);
    across(svg);
    up(svg);
    svg.stroke(
        "plot-axis",
        new Path().stroke(frame.left(), frame.floor(), frame.right(), frame.floor()),
        1);
  }

  private void grid(Svg svg) {
    Path path = new Path();
    for (double y : places(frame.yTicks(), frame.up())) {
      path.stroke(frame.left(), y, frame.right(), y);
    }
    for (double x : places(frame.xTicks(), frame.across())) {
      path.stroke(x, frame.top(), x, frame.floor());
    }
    svg.stroke("plot-grid", path, 1);
  }

  private void across(Svg svg) {
    double baseline = frame.floor() + Label.ROW - 2;
    List<String> labels = frame.xTicks().labels();
    List<Double> places = places(frame.xTicks(), frame.across());
    for (int i = 0; i < labels.size(); i++) {
      svg.text(
          "plot-tick-x",
          places.get(i),
          baseline,
          Svg.Anchor.MIDDLE,
          labels.get(i),
          LineFrame.WIDTH);
    }
    svg.text(
        "plot-title",
        (frame.left() + frame.right()) / 2,
        baseline + Label.ROW,
        Svg.Anchor.MIDDLE,
        plot.x().heading(),
        frame.right() - frame.left());
  }

  private void up(Svg svg) {
    List<String> labels = frame.yTicks().labels();
    List<Double> places = places(frame.yTicks(), frame.up());
    for (int i = 0; i < labels.size(); i++) {
      svg.text(
          "plot-tick-y",
          frame.left() - 6,
          places.get(i) + 4,
          Svg.Anchor.END,
          labels.get(i),
          LineFrame.WIDTH);
    }
    svg.text(
        "plot-title",
        LineFrame.PAD,
        LineFrame.PAD + frame.legend().height() + 12,
        Svg.Anchor.START,
        plot.y().heading(),
        LineFrame.WIDTH - 2 * LineFrame.PAD);
  }

  private static List<Double> places(Ticks ticks, Scale scale) {
    return ticks.values().stream().map(value -> scale.at(value.doubleValue())).toList();
  }
}
