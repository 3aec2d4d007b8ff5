package meltkeeper.plot;

import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.util.List;
import org.assertj.core.api.ThrowableAssert.ThrowingCallable;
import org.junit.jupiter.api.Test;

/** Each complaint as the caller reads it. */
class WrongInputTest {

  private static final Words WORDS = new Words("t", "d");

  private static void refused(ThrowingCallable act, String message) {
    assertThatIllegalArgumentException().isThrownBy(act).withMessage(message);
  }

  @Test
  void number_notFinite_isNamed() {
    refused(
        () -> Line.of("life", new double[] {0, 5}, new double[] {1, Double.NaN}),
        "the y at x 5.0 is NaN; allowed is a finite number between -1e12 and 1e12");
    refused(
        () -> new Point(Double.POSITIVE_INFINITY, 0),
        "a point's x is Infinity; allowed is a finite number between -1e12 and 1e12");
    refused(
        () -> new Rug("failed", Rug.Sign.BAR, List.of(1e13)),
        "an event of rug \"failed\" is 1.0E13; allowed is a finite number between -1e12 and 1e12");
    refused(
        () -> new Mark(Double.NaN, "now"),
        "the place of mark \"now\" is NaN; allowed is a finite number between -1e12 and 1e12");
    refused(
        () -> Axis.of("age", "h").reaching(Double.NaN),
        "a value that axis \"age\" must reach is NaN;"
            + " allowed is a finite number between -1e12 and 1e12");
  }

  @Test
  void lengths_thatDiffer_areCounted() {
    refused(
        () -> Line.of("life", new double[2], new double[3]),
        "line \"life\" has 2 x but 3 y; give one y for each x");
    refused(
        () -> Band.of("range", new double[3], new double[3], new double[2]),
        "the high edge of band \"range\" has 3 x but 2 y; give one y for each x");
  }

  @Test
  void points_tooFew_areCounted() {
    refused(
        () -> Line.of("life", new double[1], new double[1]),
        "the points of line \"life\" number 1; allowed are 2 to 10000");
    refused(
        () -> BarPlot.of(WORDS, Axis.of("h", ""), List.of()),
        "the bars of plot \"t\" number 0; allowed are 1 to 200");
  }

  @Test
  void points_outOfOrder_areNamed() {
    refused(
        () -> Line.of("life", new double[] {0, 2, 1}, new double[3]),
        "line \"life\" goes back from x 2.0 to 1.0; sort it by x");
  }

  @Test
  void ranges_upsideDown_areNamed() {
    refused(
        () -> Band.of("range", new double[2], new double[] {0, 3}, new double[] {1, 2}),
        "the band at x 0.0 runs from 3.0 down to 2.0; give low first");
    refused(
        () -> new Gauge(WORDS, 1, 3, 2, 5),
        "the range of gauge \"t\" runs from 3.0 down to 2.0; give low first");
  }

  @Test
  void bars_thatCannotBe_areNamed() {
    refused(() -> new Bar("heron", -1), "bar \"heron\" is -1.0; allowed is 0 or more");
    refused(
        () -> new Bar("heron", 1, 2),
        "the hatched part of bar \"heron\" is 2.0 of 1.0; allowed is at most the whole");
    refused(
        () -> BarPlot.of(WORDS, Axis.of("h", ""), List.of(new Bar("heron", 2, 1))),
        "plot \"t\" has hatched bars and no key; say what hatched means");
  }

  @Test
  void gauge_withoutALimit_isRefused() {
    refused(
        () -> new Gauge(WORDS, 1, 1, 1, 0),
        "the limit of gauge \"t\" is 0; allowed is more than 0");
  }

  @Test
  void words_thatAreBlank_areRefused() {
    refused(() -> new Words(" ", "d"), "a plot's title is blank; give it at least one word");
    refused(
        () -> new Words("t", ""),
        "the description of plot \"t\" is blank; give it at least one word");
  }
}
