package meltkeeper.plot;

import java.util.ArrayList;
import java.util.List;

/**
 * Samples and names in rows above a plot, as many to a row as fit; nothing where only one thing is
 * drawn, for then the axes name it.
 *
 * @param placed the entries where they stand
 * @param height of all rows together and the gap below them
 */
record Legend(List<Placed> placed, double height) {

  /** Width of a sample. */
  static final double SAMPLE = 20;

  private static final double GAP = 6;
  private static final double BETWEEN = 14;
  private static final double BELOW = 6;

  /** Draws a sample from {@code x} to {@code x + SAMPLE}, its middle at {@code y}. */
  @FunctionalInterface
  interface Sample {
    void draw(Svg svg, double x, double y);
  }

  /** What is drawn, and what it is called. */
  record Entry(String name, Sample sample) {}

  /** An entry with the left end and the middle of its sample. */
  record Placed(Entry entry, double x, double y) {}

  Legend {
    placed = List.copyOf(placed);
  }

  static Legend of(List<Entry> entries, double left, double right, double top) {
    if (entries.size() < 2) {
      return new Legend(List.of(), 0);
    }
    List<Placed> placed = new ArrayList<>();
    double x = left;
    double y = top + Label.ROW / 2.0;
    for (Entry entry : entries) {
      double width = SAMPLE + GAP + Label.width(entry.name());
      if (x > left && x + width > right) {
        x = left;
        y += Label.ROW;
      }
      placed.add(new Placed(entry, x, y));
      x += width + BETWEEN;
    }
    return new Legend(placed, y + Label.ROW / 2.0 + BELOW - top);
  }

  void draw(Svg svg, double right) {
    for (Placed at : placed) {
      at.entry().sample().draw(svg, at.x(), at.y());
      double x = at.x() + SAMPLE + GAP;
      svg.text("plot-legend", x, at.y() + 4, Svg.Anchor.START, at.entry().name(), right - x);
    }
  }
}
