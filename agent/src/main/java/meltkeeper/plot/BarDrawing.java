package meltkeeper.plot;

import java.util.List;

/**
 * Draws bars. From the top: legend, the title of what is measured, one row a bar.
 *
 * @param plot what
 * @param legend above all
 * @param left where bars begin
 * @param right where the longest ends
 * @param decimals of the printed values
 */
record BarDrawing(BarPlot plot, Legend legend, double left, double right, int decimals) {

  private static final double WIDTH = 340;
  private static final double PAD = 4;
  private static final double GAP = 6;
  private static final double LABELS = 130;
  private static final double ROW = 20;
  private static final double HALF = 7;

  static BarDrawing of(BarPlot plot) {
    int decimals = Digits.decimals(plot.values());
    List<String> labels = plot.bars().stream().map(Bar::label).toList();
    List<String> values = plot.values().mapToObj(value -> Digits.value(value, decimals)).toList();
    List<Legend.Entry> entries = plot.key().map(BarDrawing::entries).orElse(List.of());
    return new BarDrawing(
        plot,
        Legend.of(entries, PAD, WIDTH - PAD, PAD),
        PAD + Math.min(LABELS, Label.widest(labels)) + GAP,
        WIDTH - PAD - Label.widest(values) - GAP,
        decimals);
  }

  String svg() {
    double top = PAD + legend.height() + Label.ROW + PAD;
    double bottom = top + ROW * plot.bars().size();
    Svg svg = Svg.plot(plot.words(), WIDTH, bottom + PAD);
    legend.draw(svg, WIDTH - PAD);
    svg.text(
        "plot-title",
        PAD,
        PAD + legend.height() + 12,
        Svg.Anchor.START,
        plot.measure().heading(),
        WIDTH - 2 * PAD);
    for (int i = 0; i < plot.bars().size(); i++) {
      bar(svg, plot.bars().get(i), top + ROW * (i + 0.5));
    }
    svg.stroke("plot-axis", new Path().stroke(left, top, left, bottom), 1);
    return svg.end();
  }

  private void bar(Svg svg, Bar bar, double y) {
    Scale scale = new Scale(0, plot.widest(), left, right);
    double end = scale.at(bar.value());
    double split = scale.at(bar.value() - bar.hatched());
    if (bar.value() > bar.hatched()) {
      solid(svg, left, split, y);
    }
    if (bar.hatched() > 0) {
      hatched(svg, split, end, y);
    }
    svg.text("plot-label", left - GAP, y + 4, Svg.Anchor.END, bar.label(), LABELS);
    String value = Digits.value(bar.value(), decimals);
    svg.text("plot-value", end + GAP, y + 4, Svg.Anchor.START, value, WIDTH);
  }

  private static List<Legend.Entry> entries(BarPlot.Key key) {
    return List.of(
        new Legend.Entry(key.solid(), (svg, x, y) -> solid(svg, x, x + Legend.SAMPLE, y)),
        new Legend.Entry(key.hatched(), (svg, x, y) -> hatched(svg, x, x + Legend.SAMPLE, y)));
  }

  private static void solid(Svg svg, double from, double to, double y) {
    svg.area("plot-solid plot-1", new Path().box(from, y - HALF, to, y + HALF), 0.8);
  }

  private static void hatched(Svg svg, double from, double to, double y) {
    Path box = new Path().box(from, y - HALF, to, y + HALF);
    svg.area("plot-hatched plot-1", box, 0.2);
    svg.stroke("plot-hatch plot-1", hatching(from, to, y), 1);
  }

  /** Strokes rising to the right, cut to the box; a pattern would need an id. */
  private static Path hatching(double from, double to, double y) {
    Path path = new Path().box(from, y - HALF, to, y + HALF);
    double height = 2 * HALF;
    for (double foot = from - height + 3; foot < to; foot += 5) {
      double lower = Math.max(0, from - foot);
      double upper = Math.min(height, to - foot);
      if (upper > lower) {
        path.stroke(foot + lower, y + HALF - lower, foot + upper, y + HALF - upper);
      }
    }
    return path;
  }
}
