package meltkeeper.plot;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Element;

/**
 * Places worked by hand: the label "heron" takes 5 · 7.2 = 36, so bars begin at 4 + 36 + 6 = 46;
 * the value "100" takes 21.6, so the longest ends at 340 - 4 - 21.6 - 6 = 308.4. Rows of 20 begin
 * at 25, bars are 14 high.
 */
class BarPlotTest {

  private static final Words WORDS = new Words("Hours", "Hours by printer.");
  private static final Axis HOURS = Axis.of("Hot hours", "h");
  private static final BarPlot.Key KEY = new BarPlot.Key("printing", "idle");

  private static Drawing draw(Bar... bars) {
    return Drawing.of(BarPlot.of(WORDS, HOURS, List.of(bars)));
  }

  @Test
  void bars_areAsLongAsTheirValues() {
    List<Element> bars = draw(new Bar("heron", 100), new Bar("ibis", 50)).ofClass("plot-solid");
    assertThat(Drawing.corners(bars.get(0)))
        .containsExactly(
            new Point(46, 28), new Point(308.4, 28), new Point(308.4, 42), new Point(46, 42));
    assertThat(Drawing.corners(bars.get(1)))
        .containsExactly(
            new Point(46, 48), new Point(177.2, 48), new Point(177.2, 62), new Point(46, 62));
  }

  @Test
  void hatchedPart_takesTheFarEnd_andItsStrokesStayInside() {
    Drawing drawing = Drawing.of(BarPlot.of(WORDS, HOURS, List.of(new Bar("heron", 100, 50)), KEY));
    assertThat(drawing.corners("plot-solid")).extracting(Point::x).contains(46.0, 177.2);
    assertThat(drawing.corners("plot-hatched")).extracting(Point::x).containsOnly(177.2, 308.4);
    List<Point> strokes = drawing.corners("plot-hatch");
    assertThat(strokes).hasSizeGreaterThan(40);
    assertThat(strokes)
        .allSatisfy(
            corner -> {
              assertThat(corner.x()).isBetween(177.2, 308.4);
              // the row's middle is at 4 + 23 + 17 + 4 + 10 = 58
              assertThat(corner.y()).isBetween(51.0, 65.0);
            });
    for (int i = 4; i < strokes.size(); i += 2) {
      double across = strokes.get(i + 1).x() - strokes.get(i).x();
      double down = strokes.get(i + 1).y() - strokes.get(i).y();
      assertThat(across).isCloseTo(-down, within(0.11));
    }
    assertThat(drawing.texts("plot-legend")).containsExactly("printing", "idle");
  }

  @Test
  void values_ofOnePlot_shareTheirDigits() {
    assertThat(
            draw(new Bar("a", 312.4), new Bar("b", 9.5), new Bar("c", 0.3), new Bar("d", 0))
                .texts("plot-value"))
        .containsExactly("312", "10", "<1", "0");
    assertThat(draw(new Bar("a", 1.2345), new Bar("b", 0.004)).texts("plot-value"))
        .containsExactly("1.23", "<0.01");
  }

  @Test
  void bars_allZero_haveNoLength() {
    Drawing drawing = draw(new Bar("heron", 0), new Bar("ibis", 0));
    assertThat(drawing.ofClass("plot-solid")).isEmpty();
    assertThat(drawing.texts("plot-value")).containsExactly("0", "0");
  }

  @Test
  void axis_reachingFurther_shortensTheBars() {
    BarPlot plot = BarPlot.of(WORDS, HOURS.reaching(200), List.of(new Bar("heron", 100)));
    assertThat(Drawing.of(plot).corners("plot-solid"))
        .extracting(Point::x)
        .containsOnly(46.0, 177.2);
  }

  @Test
  void label_tooLong_isShortenedAndShowsWholeOnHovering() {
    Element label = draw(new Bar("the great crested grebe", 1)).ofClass("plot-label").get(0);
    // 130 / 7.2 = 18 characters, the last of them the ellipsis
    assertThat(label.getTextContent()).isEqualTo("the great crested grebethe great crested…");
    assertThat(label.getElementsByTagName("title").getLength()).isEqualTo(1);
  }
}
