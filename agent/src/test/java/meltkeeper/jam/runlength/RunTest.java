package meltkeeper.jam.runlength;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.data.Percentage.withPercentage;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class RunTest {

  /**
   * Computed apart, in Python with numpy and scipy; h = 3 is Waldmann's 9/82/345 of 1986, of which
   * 346 is the exact one.
   */
  @ParameterizedTest
  @CsvSource({
    "3, 0, 9, 82, 346",
    "4, 0, 22, 234, 995",
    "5, 0, 54, 647, 2776",
    "5, 1, 4, 9, 21",
    "8, 1, 7, 15, 30"
  })
  void quantile_ofTheRunLength_isTheReferences(
      double h, double shift, int low, int middle, int high) {
    Chart chart = new Chart(0.5, h);
    assertThat(Run.quantile(chart, shift, 0.05)).isEqualTo(low);
    assertThat(Run.quantile(chart, shift, 0.5)).isEqualTo(middle);
    assertThat(Run.quantile(chart, shift, 0.95)).isEqualTo(high);
  }

  /** Computed apart, in Python with numpy and scipy, the delay in service. */
  @ParameterizedTest
  @CsvSource({
    "0.25, 4, 74.911",
    "0.5, 4, 25.364",
    "0.75, 4, 12.390",
    "1, 4, 7.7219",
    "1.5, 4, 4.3312",
    "2, 4, 3.0480",
    "0.25, 5, 139.04",
    "0.5, 5, 36.505",
    "1, 5, 9.6499",
    "2, 5, 3.6890",
    "0.5, 6, 49.719",
    "1, 6, 11.612",
    "2, 6, 4.3425",
    "0.5, 8, 82.277",
    "1, 8, 15.583",
    "2, 8, 5.6656",
    "0.5, 12.5519, 186.40",
    "1, 12.5519, 24.678",
    "2, 12.5519, 8.6974"
  })
  void steadyDelay_afterALongQuietTime_isTheReferences(double shift, double h, double expected) {
    assertThat(Run.steadyDelay(new Chart(0.5, h), shift, 400))
        .isCloseTo(expected, withPercentage(0.01));
  }

  /**
   * The heater alone: 10 s means of a duty that spreads by 0.010, and what goes missing of it in
   * spreads. Computed apart, in Python with numpy and scipy.
   */
  @ParameterizedTest
  @CsvSource({
    ".6694, 53.1, .05",
    "2.2315, 6.66, .005",
    ".4463, 235.6, .05",
    "1.3389, 13.2, .05",
    "4.4630, 3.16, .005",
    ".8926, 26.7, .05",
    "2.6778, 5.38, .005"
  })
  void steadyDelay_ofTheHeaterAlone_isTheReferences(
      double shift, double expected, double precision) {
    assertThat(Run.steadyDelay(new Chart(0.5, 10.9425), shift, 400))
        .isCloseTo(expected, within(precision));
  }

  /** Computed apart, in Python with numpy and scipy, the mean's rise a sample. */
  @ParameterizedTest
  @CsvSource({
    "0.001, 0.5, 5, 230.61",
    "0.003, 0.5, 5, 122.26",
    "0.01, 0.5, 5, 57.159",
    "0.03, 0.5, 5, 28.155",
    "0.1, 0.5, 5, 13.315",
    "0.003, 0.5, 12.5519, 222.52",
    "0.01, 0.5, 12.5519, 89.892",
    "0.03, 0.25, 23.4844, 45.778",
    "0.1, 0.25, 23.4844, 23.576"
  })
  void meanToAlarm_ofASlowDrift_isTheReferences(double theta, double k, double h, double expected) {
    assertThat(new Run(new Chart(k, h)).meanToAlarm(n -> theta * n))
        .isCloseTo(expected, withPercentage(0.005));
  }

  @Test
  void meanToAlarm_ofASteadyShift_isTheAverageRunLength() {
    Chart chart = new Chart(0.5, 5);
    assertThat(new Run(chart).meanToAlarm(n -> 1))
        .isCloseTo(chart.averageRunLength(1), withPercentage(1e-6));
  }

  @Test
  void chanceOfSilence_neverRises() {
    Run run = new Run(new Chart(0.5, 5));
    double before = 1;
    for (int n = 0; n < 300; n++) {
      double silent = run.sample(0.2);
      assertThat(silent).isBetween(0.0, before);
      before = silent;
    }
  }
}
