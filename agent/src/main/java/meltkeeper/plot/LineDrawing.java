package meltkeeper.plot;

import java.util.ArrayList;
import java.util.List;

/**
 * Draws a line plot into its frame.
 *
 * @param plot what
 * @param frame where
 */
record LineDrawing(LinePlot plot, LineFrame frame) {

  private static final List<String> DASHES = List.of("", "7 4", "2 3", "9 3 2 3");
  private static final double THICK = 2;

  static LineDrawing of(LinePlot plot) {
    Legend legend =
        Legend.of(entries(plot), LineFrame.PAD, LineFrame.WIDTH - LineFrame.PAD, LineFrame.PAD);
    return new LineDrawing(plot, LineFrame.of(plot, legend));
  }

  String svg() {
    Svg svg = Svg.plot(plot.words(), LineFrame.WIDTH, frame.height());
    frame.legend().draw(svg, LineFrame.WIDTH - LineFrame.PAD);
    new LineAxes(plot, frame).draw(svg);
    plot.band().ifPresent(band -> svg.area("plot-band plot-1", outline(band), 0.2));
    for (int i = 0; i < plot.lines().size(); i++) {
      line(svg, i, trace(plot.lines().get(i)));
    }
    for (int i = 0; i < plot.rugs().size(); i++) {
      rug(svg, plot.rugs().get(i), frame.lane(i));
    }
    plot.mark().ifPresent(mark -> mark(svg, mark));
    return svg.end();
  }

  private static List<Legend.Entry> entries(LinePlot plot) {
    List<Legend.Entry> entries = new ArrayList<>();
    for (int i = 0; i < plot.lines().size(); i++) {
      int index = i;
      entries.add(
          new Legend.Entry(
              plot.lines().get(i).name(),
              (svg, x, y) -> line(svg, index, new Path().stroke(x, y, x + Legend.SAMPLE, y))));
    }
    plot.band()
        .ifPresent(
            band ->
                entries.add(
                    new Legend.Entry(
                        band.name(),
                        (svg, x, y) ->
                            svg.area(
                                "plot-band plot-1",
                                new Path().box(x, y - 5, x + Legend.SAMPLE, y + 5),
                                0.2))));
    for (Rug rug : plot.rugs()) {
      entries.add(
          new Legend.Entry(
              rug.name(),
              (svg, x, y) -> signs(svg, rug.sign(), sign(rug.sign(), new Path(), x + 10, y))));
    }
    return entries;
  }

  private static void line(Svg svg, int index, Path path) {
    svg.stroke("plot-line plot-" + (index + 1), path, THICK, DASHES.get(index));
  }

  private Path trace(Line line) {
    Path path = new Path();
    for (Point point : line.points()) {
      path.to(frame.across().at(point.x()), frame.up().at(point.y()));
    }
    return path;
  }

  private Path outline(Band band) {
    Path path = new Path();
    for (Band.Slice slice : band.slices()) {
      path.to(frame.across().at(slice.x()), frame.up().at(slice.high()));
    }
    for (int i = band.slices().size() - 1; i >= 0; i--) {
      Band.Slice slice = band.slices().get(i);
      path.to(frame.across().at(slice.x()), frame.up().at(slice.low()));
    }
    return path.close();
  }

  private void rug(Svg svg, Rug rug, double y) {
    Path path = new Path();
    for (double x : rug.at()) {
      sign(rug.sign(), path, frame.across().at(x), y);
    }
    if (!rug.at().isEmpty()) {
      signs(svg, rug.sign(), path);
    }
  }

  private static Path sign(Rug.Sign sign, Path path, double x, double y) {
    return sign == Rug.Sign.CROSS
        ? path.stroke(x - 4, y - 4, x + 4, y + 4).stroke(x - 4, y + 4, x + 4, y - 4)
        : path.stroke(x, y - 5, x, y + 5);
  }

  private static void signs(Svg svg, Rug.Sign sign, Path path) {
    svg.stroke(sign == Rug.Sign.CROSS ? "plot-cross" : "plot-bar", path, 1.6);
  }

  private void mark(Svg svg, Mark mark) {
    double x = frame.across().at(mark.x());
    double half = Label.width(mark.label()) / 2;
    double middle =
        Math.max(LineFrame.PAD + half, Math.min(x, LineFrame.WIDTH - LineFrame.PAD - half));
    svg.stroke("plot-mark", new Path().stroke(x, frame.top() - 4, x, frame.floor()), 1.5, "4 3");
    svg.text(
        "plot-mark",
        middle,
        frame.top() - 8,
        Svg.Anchor.MIDDLE,
        mark.label(),
        LineFrame.WIDTH - 2 * LineFrame.PAD);
  }
}
