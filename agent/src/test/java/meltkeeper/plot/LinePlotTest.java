package meltkeeper.plot;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Element;

/**
 * Places worked by hand: the view box is 340 wide. The widest y label "0.0" takes 3 · 7.2 = 21.6,
 * so the area begins at 4 + 21.6 + 6 = 31.6; the widest x label "1000" takes 28.8, so it ends at
 * 340 - 4 - 14.4 = 321.6. Without legend it spans 4 + 17 + 8 = 29 to 29 + 180 = 209. Printed to
 * 0.1.
 */
class LinePlotTest {

  private static final Words WORDS = new Words("Share", "Rises to one.");
  private static final Axis HOURS = Axis.of("Age", "h");
  private static final Axis SHARE = Axis.of("Share", "").reaching(0, 1);
  private static final Line RISING =
      Line.of("share", new double[] {0, 250, 500, 1000}, new double[] {0, 0.25, 0.5, 1});
  private static final LinePlot PLOT = LinePlot.of(WORDS, HOURS, SHARE, RISING);

  @Test
  void points_ofALine_lieWhereTheAxesSay() {
    assertThat(Drawing.of(PLOT).corners("plot-line"))
        .containsExactly(
            new Point(31.6, 209),
            new Point(104.1, 164),
            new Point(176.6, 119),
            new Point(321.6, 29));
  }

  @Test
  void ticks_standBesideTheirGridLines() {
    Drawing drawing = Drawing.of(PLOT);
    assertThat(drawing.texts("plot-tick-x"))
        .containsExactly("0", "200", "400", "600", "800", "1000");
    assertThat(drawing.texts("plot-tick-y"))
        .containsExactly("0.0", "0.2", "0.4", "0.6", "0.8", "1.0");
    List<Point> grid = drawing.corners("plot-grid");
    for (int i = 0; i < 6; i++) {
      Element up = drawing.ofClass("plot-tick-y").get(i);
      assertThat(Double.parseDouble(up.getAttribute("y"))).isEqualTo(grid.get(2 * i).y() + 4);
      Element across = drawing.ofClass("plot-tick-x").get(i);
      assertThat(Double.parseDouble(across.getAttribute("x"))).isEqualTo(grid.get(12 + 2 * i).x());
    }
  }

  @Test
  void titles_bearTheirUnits() {
    assertThat(Drawing.of(PLOT).texts("plot-title")).containsExactly("Age (h)", "Share");
  }

  @Test
  void legend_ofOneLine_isLeftOut() {
    assertThat(Drawing.of(PLOT).texts("plot-legend")).isEmpty();
  }

  @Test
  void legend_ofManyThings_namesEachOnce() {
    assertThat(Drawing.of(Samples.survival()).texts("plot-legend"))
        .containsExactly("expected", "90 % range", "failed (5)", "alive (7)");
  }

  @Test
  void lines_ofOnePlot_differInDash() {
    Plot two = LinePlot.of(WORDS, HOURS, SHARE, RISING, RISING, RISING, RISING);
    assertThat(Drawing.of(two).ofClass("plot-line").subList(4, 8))
        .extracting(path -> path.getAttribute("stroke-dasharray"))
        .doesNotHaveDuplicates();
  }

  @Test
  void band_aroundALine_containsIt() {
    Drawing drawing = Drawing.of(Samples.survival());
    List<Point> line = drawing.corners("plot-line");
    List<Point> band = drawing.corners("plot-band");
    assertThat(band).hasSize(2 * line.size());
    IntStream.range(0, line.size())
        .forEach(
            i -> {
              Point high = band.get(i);
              Point low = band.get(band.size() - 1 - i);
              assertThat(List.of(high.x(), low.x())).containsOnly(line.get(i).x());
              assertThat(line.get(i).y()).isBetween(high.y(), low.y());
            });
    Element area = drawing.ofClass("plot-band").get(1);
    assertThat(area.getAttribute("d")).endsWith("Z");
  }

  @Test
  void band_beyondTheLines_widensTheAxis() {
    Band wide = Band.of("range", new double[] {0, 2000}, new double[] {0, 0}, new double[] {3, 3});
    assertThat(Drawing.of(PLOT.with(wide)).texts("plot-tick-x")).last().isEqualTo("2000");
    assertThat(Drawing.of(PLOT.with(wide)).texts("plot-tick-y")).last().isEqualTo("3");
  }

  @Test
  void rugs_eachInItsLane_areDrawnInTheirShape() {
    Drawing drawing =
        Drawing.of(
            PLOT.with(new Rug("failed", Rug.Sign.CROSS, List.of(500.0)))
                .with(new Rug("alive", Rug.Sign.BAR, List.of(0.0, 1000.0))));
    // One row of legend moves all down by 17 + 6: the area ends at 232; lanes of 13 have
    // their middles at 238.5 and 251.5.
    assertThat(drawing.corners("plot-cross"))
        .containsExactly(
            new Point(172.6, 234.5),
            new Point(180.6, 242.5),
            new Point(172.6, 242.5),
            new Point(180.6, 234.5));
    assertThat(drawing.corners("plot-bar"))
        .containsExactly(
            new Point(31.6, 246.5),
            new Point(31.6, 256.5),
            new Point(321.6, 246.5),
            new Point(321.6, 256.5));
  }

  @Test
  void rug_withoutEvents_keepsItsPlaceInTheLegend() {
    Drawing drawing = Drawing.of(PLOT.with(new Rug("failed (0)", Rug.Sign.CROSS, List.of())));
    assertThat(drawing.ofClass("plot-cross")).hasSize(1);
    assertThat(drawing.texts("plot-legend")).containsExactly("share", "failed (0)");
  }

  @Test
  void mark_standsOverTheWholeHeight_withItsLabelAbove() {
    Drawing drawing = Drawing.of(PLOT.with(new Mark(500, "replace at 500 h")));
    assertThat(drawing.corners("plot-mark"))
        .containsExactly(new Point(176.6, 42), new Point(176.6, 226));
    Element label = drawing.ofClass("plot-mark").get(1);
    assertThat(label.getTextContent()).isEqualTo("replace at 500 h");
    assertThat(label.getAttribute("x")).isEqualTo("176.6");
  }

  @Test
  void mark_atTheEdge_keepsItsLabelInside() {
    Drawing drawing = Drawing.of(PLOT.with(new Mark(1000, "ten letter")));
    // 10 · 7.2 / 2 = 36 from the edge at 336
    assertThat(drawing.ofClass("plot-mark").get(1).getAttribute("x")).isEqualTo("300");
  }

  @Test
  void line_allZero_liesOnTheAxis() {
    Line zero = Line.of("none", new double[] {0, 0}, new double[] {0, 0});
    Drawing drawing = Drawing.of(LinePlot.of(WORDS, HOURS, Axis.of("Alerts", ""), zero));
    assertThat(drawing.corners("plot-line")).extracting(Point::y).containsOnly(209.0);
    assertThat(drawing.texts("plot-tick-y")).startsWith("0.0").endsWith("1.0");
  }

  @Test
  void line_allEqual_liesInTheMiddle() {
    Line level = Line.of("level", new double[] {0, 10}, new double[] {40, 40});
    Drawing drawing = Drawing.of(LinePlot.of(WORDS, HOURS, Axis.of("Load", ""), level));
    assertThat(drawing.corners("plot-line"))
        .allSatisfy(point -> assertThat(point.y()).isCloseTo(119, within(0.05)));
  }
}
