package meltkeeper.jam.runlength;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.data.Percentage.withPercentage;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class FalseAlarmsTest {

  /** Computed apart, in Python with numpy and scipy. */
  @ParameterizedTest
  @CsvSource({
    "100, 2, 18.8801, 10.2494, 6.9959, 5.2589",
    "100, 10, 15.6644, 8.6404, 5.9231, 4.4543",
    "100, 30, 13.4740, 7.5428, 5.1910, 3.9049",
    "1000, 2, 23.4844, 12.5519, 8.5309, 6.4101",
    "1000, 10, 20.2659, 10.9425, 7.4580, 5.6054",
    "1000, 30, 18.0696, 9.8440, 6.7256, 5.0562",
    "10000, 2, 28.0894, 14.8544, 10.0660, 7.5614",
    "10000, 10, 24.8706, 13.2450, 8.9930, 6.7567",
    "10000, 30, 22.6735, 12.1464, 8.2606, 6.2074"
  })
  void limit_ofOneChart_isTheReferences(
      double hours, double period, double k25, double k50, double k75, double k100) {
    FalseAlarms wanted = new FalseAlarms(hours, 1);
    assertThat(wanted.limit(0.25, period)).isCloseTo(k25, within(0.0001));
    assertThat(wanted.limit(0.5, period)).isCloseTo(k50, within(0.0001));
    assertThat(wanted.limit(0.75, period)).isCloseTo(k75, within(0.0001));
    assertThat(wanted.limit(1, period)).isCloseTo(k100, within(0.0001));
  }

  /** Computed apart, in Python with numpy and scipy: two charts that share one alarm per 1000 h. */
  @Test
  void limit_ofTwoCharts_isTheReferences() {
    assertThat(new FalseAlarms(1000, 2).limit(0.5, 10)).isCloseTo(11.6356, within(0.0001));
  }

  /** Computed apart, in Python with numpy and scipy: doubling the interval adds ln 2 / 2k. */
  @Test
  void limit_ofTwiceTheInterval_isHigherByTheLogarithmOfTwo() {
    double once = new FalseAlarms(1000, 1).limit(0.5, 10);
    double twice = new FalseAlarms(2000, 1).limit(0.5, 10);
    assertThat(twice - once).isCloseTo(Math.log(2), within(0.001));
  }

  /** Computed apart, in Python with numpy and scipy: Siegmund 1985 beside the exact. */
  @ParameterizedTest
  @CsvSource({
    "0, 3, 118.58", "0, 4, 338.09", "0, 5, 938.22", "0, 6, 2573.0", "0, 8, 19112",
    "0.5, 3, 17.356", "0.5, 5, 38.020", "0.5, 8, 84.016", "1, 3, 6.3630", "1, 5, 10.336",
    "2, 3, 2.5551", "2, 8, 5.8884"
  })
  void closedForm_isTheReferences(double shift, double h, double expected) {
    assertThat(Siegmund.averageRunLength(0.5, h, shift)).isCloseTo(expected, withPercentage(0.01));
  }

  /** Computed apart, in Python with numpy and scipy: closed form at a run length of 1.8e6. */
  @ParameterizedTest
  @CsvSource({"0.25, 23.4817", "0.5, 12.5442", "0.75, 8.5147", "1, 6.3822"})
  void closedFormLimit_isTheReferences(double k, double expected) {
    assertThat(Siegmund.limit(k, 1.8e6)).isCloseTo(expected, within(0.0005));
  }

  @Test
  void closedFormLimit_ofAnyRunLength_givesThatRunLength() {
    for (double samples = 100; samples < 1e8; samples *= 7) {
      for (double k = 0.1; k < 1.5; k += 0.2) {
        double limit = Siegmund.limit(k, samples);
        assertThat(Siegmund.averageRunLength(k, limit, 0)).isCloseTo(samples, withPercentage(0.01));
      }
    }
  }

  @ParameterizedTest
  @CsvSource({"0, 1", "-1, 1", "NaN, 1", "1000, 0"})
  void falseAlarms_thatCannotBe_areRefused(double hours, int charts) {
    assertThatThrownBy(() -> new FalseAlarms(hours, charts))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("an interval above 0 h and at least 1 chart, not " + hours);
  }
}
