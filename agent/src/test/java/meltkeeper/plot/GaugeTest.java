package meltkeeper.plot;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;

/** Places worked by hand: 0 lies at 1 and the limit at 97, so a limit of 960 takes 10 a pixel. */
class GaugeTest {

  private static Drawing draw(double value, double low, double high) {
    return Drawing.of(new Gauge(new Words("Life used", "In words."), value, low, high, 960));
  }

  @Test
  void value_belowTheLimit_fillsItsShare() {
    Drawing drawing = draw(480, 300, 700);
    assertThat(drawing.corners("plot-fill")).extracting(Point::x).containsOnly(1.0, 49.0);
    assertThat(drawing.ofClass("plot-over")).isEmpty();
    assertThat(drawing.corners("plot-range"))
        .containsExactly(
            new Point(31, 8),
            new Point(71, 8),
            new Point(31, 5),
            new Point(31, 11),
            new Point(71, 5),
            new Point(71, 11));
  }

  @Test
  void value_overTheLimit_passesItInAlarm() {
    Drawing drawing = draw(1060, 900, 1100);
    assertThat(drawing.corners("plot-over")).extracting(Point::x).containsOnly(1.0, 107.0);
    assertThat(drawing.corners("plot-limit")).extracting(Point::x).containsOnly(97.0);
  }

  @Test
  void range_farBeyondTheLimit_endsInAnArrow() {
    List<Point> range = draw(900, 600, 1e9).corners("plot-range");
    assertThat(range.subList(4, 7))
        .containsExactly(new Point(114, 4), new Point(118, 8), new Point(114, 12));
  }

  @Test
  void value_zero_leavesTheTrackEmpty() {
    assertThat(draw(0, 0, 0).ofClass("plot-fill")).isEmpty();
  }
}
