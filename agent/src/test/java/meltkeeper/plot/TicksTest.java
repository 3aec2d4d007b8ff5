package meltkeeper.plot;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Random;
import java.util.stream.DoubleStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Heckbert's rule (Graphics Gems, 1990, cited from memory): span = nice(max - min) upwards, step =
 * nice(span / (wanted - 1)) to the nearest. Expected ticks worked by hand from it.
 */
class TicksTest {

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        // span 500, 500 / 4 = 125, step 100
        "105    | 543    | 100 200 300 400 500 600",
        // span 1, step 0.2
        "0      | 1      | 0.0 0.2 0.4 0.6 0.8 1.0",
        // span 2000, step 500
        "0      | 1200   | 0 500 1000 1500",
        // span 20, step 5
        "-7     | 8      | −10 −5 0 5 10",
        // span 0.005, 0.00125, step 0.001
        "0.0012 | 0.0043 | 0.001 0.002 0.003 0.004 0.005",
        // span 1, step 0.2: 0.6 is three steps, not 2.9999999999999996
        "0.6    | 1.2    | 0.6 0.8 1.0 1.2",
        // span 500,000,000, step 1e8
        "0      | 3.2e8  | 0 1e8 2e8 3e8 4e8",
        // span 2e-7, step 5e-8
        "0      | 1.4e-7 | 0 5e−8 1e−7 1.5e−7"
      })
  void labels_ofARange_areRoundAndReachItsEnds(double least, double most, String labels) {
    assertThat(Ticks.between(least, most, 5).labels()).containsExactly(labels.split(" "));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "0  | 0.0 0.2 0.4 0.6 0.8 1.0", // all zero: 0 to 1
        "40 | 20 30 40 50 60", // 20 to 60: span 50, 12.5, step 10
        "-4 | −6 −5 −4 −3 −2", // -6 to -2: span 5, 1.25, step 1
      })
  void labels_ofOneValue_standAroundIt(double value, String labels) {
    assertThat(Ticks.between(value, value, 5).labels()).containsExactly(labels.split(" "));
  }

  @Test
  void ticks_withoutData_runFromZeroToOne() {
    assertThat(Ticks.over(DoubleStream.empty(), 5).last()).isEqualTo(1);
  }

  @Test
  void ticks_ofAnyRange_areFewDistinctAndEnclosing() {
    long seed = 20260302;
    Random random = new Random(seed);
    for (int i = 0; i < 2_000; i++) {
      double size = Math.pow(10, random.nextInt(20) - 9);
      double least = size * (random.nextDouble() - 0.5);
      double most = least + size * Math.pow(10, -4 * random.nextDouble());
      Ticks ticks = Ticks.between(least, most, 5);
      String what = "seed " + seed + ", case " + i + ": " + least + " to " + most + ", " + ticks;
      double slack = (ticks.last() - ticks.first()) * 1e-8;
      assertThat(ticks.first()).as(what).isLessThanOrEqualTo(least + slack);
      assertThat(ticks.last()).as(what).isGreaterThanOrEqualTo(most - slack);
      assertThat(ticks.values()).as(what).hasSizeBetween(3, 7);
      assertThat(ticks.labels()).as(what).doesNotHaveDuplicates();
      String digits = ticks.values().get(1).subtract(ticks.values().get(0)).unscaledValue() + "";
      assertThat(digits).as(what).matches("(1|2|5)0*");
    }
  }
}
