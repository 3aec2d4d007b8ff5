package meltkeeper.plot;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;

/** Hostile text arrives in every place that takes text, and leaves as text. */
class EscapeTest {

  private static final String HOSTILE = "</svg><script>a('&\"')</script>]]>";
  private static final Words WORDS = new Words(HOSTILE, HOSTILE);
  private static final Axis AXIS = Axis.of(HOSTILE, HOSTILE);
  private static final double[] TWO = {0, 1};

  @Test
  void hostileText_inALinePlot_staysText() {
    LinePlot plot =
        LinePlot.of(WORDS, AXIS, AXIS, Line.of(HOSTILE, TWO, TWO))
            .with(Band.of(HOSTILE, TWO, TWO, TWO))
            .with(new Rug(HOSTILE, Rug.Sign.CROSS, List.of(1.0)))
            .with(new Mark(1, HOSTILE));
    Drawing drawing = Drawing.of(plot);
    assertThat(drawing.elements()).noneMatch(element -> element.getTagName().equals("script"));
    assertThat(drawing.elements().get(0).getTextContent()).isEqualTo(HOSTILE);
    assertThat(drawing.elements().get(1).getTextContent()).isEqualTo(HOSTILE);
    assertThat(drawing.texts("plot-legend")).containsExactly(HOSTILE, HOSTILE, HOSTILE);
    assertThat(drawing.texts("plot-mark")).containsExactly(HOSTILE);
    assertThat(plot.svg()).doesNotContain("<script", "]]>", "'");
  }

  @Test
  void hostileText_inABarPlot_staysText() {
    BarPlot plot =
        BarPlot.of(WORDS, AXIS, List.of(new Bar(HOSTILE, 1, 1)), new BarPlot.Key(HOSTILE, HOSTILE));
    assertThat(Drawing.of(plot).texts("plot-label")).allMatch(text -> text.startsWith(HOSTILE));
    assertThat(plot.svg()).doesNotContain("<script");
  }

  @Test
  void hostileText_inAGauge_staysText() {
    Plot plot = new Gauge(WORDS, 1, 0, 2, 3);
    assertThat(Drawing.of(plot).elements().get(1).getTextContent()).isEqualTo(HOSTILE);
  }

  @Test
  void characters_thatXmlForbids_becomeTheReplacementCharacter() {
    Plot plot = new Gauge(new Words("a\0b\u001bc\uD800d\uFFFEe", "f\uD83D\uDC26"), 1, 0, 2, 3);
    Drawing drawing = Drawing.of(plot);
    assertThat(drawing.elements().get(0).getTextContent())
        .isEqualTo("a\uFFFDb\uFFFDc\uFFFDd\uFFFDe");
    assertThat(drawing.elements().get(1).getTextContent()).isEqualTo("f\uD83D\uDC26");
  }

  @Test
  void longText_ofPairedCharacters_isNotCutWithinAPair() {
    String birds = "\uD83D\uDC26".repeat(40);
    Plot plot = BarPlot.of(new Words("t", "d"), Axis.of("a", ""), List.of(new Bar(birds, 1)));
    assertThat(Drawing.of(plot).texts("plot-label").get(0))
        .isEqualTo(birds + "\uD83D\uDC26".repeat(17) + "…");
  }
}
