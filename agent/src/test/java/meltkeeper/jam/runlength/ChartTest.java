package meltkeeper.jam.runlength;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.data.Percentage.withPercentage;

import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Tolerances are the figures' own precision: half a unit of the last printed digit, as a share. */
class ChartTest {

  /**
   * Computed apart, in Python with numpy and scipy, by quadrature and by chain with Richardson,
   * which agree to 2e-8.
   */
  @ParameterizedTest
  @CsvSource({
    "0,    117.596, 335.368, 930.887, 2553.12, 18965.7",
    "0.25, 39.4716, 77.0785, 141.688, 250.805, 736.788",
    "0.5,  17.3505, 26.6792, 38.0096, 51.3400, 84.0008",
    "0.75, 9.68013, 13.2866, 17.0485, 20.9041, 28.7634",
    "1,    6.40391, 8.38320, 10.3760, 12.3733, 16.3720",
    "1.5,  3.74911, 4.74717, 5.74722, 6.74727, 8.74726",
    "2,    2.67969, 3.34277, 4.00887, 4.67606, 6.00926"
  })
  void oneSidedRunLength_fromZero_isTheReferences(
      double shift, double h3, double h4, double h5, double h6, double h8) {
    double[] limits = {3, 4, 5, 6, 8};
    double[] expected = {h3, h4, h5, h6, h8};
    for (int i = 0; i < limits.length; i++) {
      assertThat(new Chart(0.5, limits[i]).averageRunLength(shift))
          .isCloseTo(expected[i], withPercentage(0.001));
    }
  }

  /** Computed apart, in Python with numpy and scipy, head start of half the limit. */
  @ParameterizedTest
  @CsvSource({
    "0,    316.379, 895.834, 18782.3",
    "0.25, 66.5669, 124.928, 684.310",
    "0.5,  20.2531, 28.7569, 63.2506",
    "0.75, 8.99116, 11.2441, 17.8632",
    "1,    5.29102, 6.34797, 9.41552",
    "1.5,  2.86224, 3.37198, 4.87346",
    "2,    2.01439, 2.36229, 3.36587"
  })
  void oneSidedRunLength_fromHalfTheLimit_isTheReferences(
      double shift, double h4, double h5, double h8) {
    assertThat(new Chart(0.5, 4).averageRunLength(shift, 2)).isCloseTo(h4, withPercentage(0.001));
    assertThat(new Chart(0.5, 5).averageRunLength(shift, 2.5)).isCloseTo(h5, withPercentage(0.001));
    assertThat(new Chart(0.5, 8).averageRunLength(shift, 4)).isCloseTo(h8, withPercentage(0.001));
  }

  /** Lucas and Crosier 1982, Table 1, as transcribed in the examples of the R package spc. */
  @ParameterizedTest
  @CsvSource({
    "0, 168, 149, 0.5", "0.25, 74.2, 62.7, 0.05", "0.5, 26.6, 20.1, 0.05",
    "0.75, 13.3, 8.97, 0.05", "1, 8.38, 5.29, 0.005", "1.5, 4.75, 2.86, 0.005",
    "2, 3.34, 2.01, 0.006", "2.5, 2.62, 1.59, 0.005", "3, 2.19, 1.32, 0.006",
    "4, 1.71, 1.07, 0.005", "5, 1.31, 1.01, 0.005"
  })
  void twoSidedRunLength_ofLimitFour_isLucasAndCrosiers(
      double shift, double plain, double ahead, double precision) {
    Chart chart = new Chart(0.5, 4);
    assertThat(chart.twoSidedRunLength(shift, 0))
        .isCloseTo(plain, org.assertj.core.api.Assertions.within(precision));
    assertThat(chart.twoSidedRunLength(shift, 2))
        .isCloseTo(ahead, org.assertj.core.api.Assertions.within(precision));
  }

  /**
   * Montgomery's textbook table (from memory) where given to its digits; computed apart, in Python
   * with numpy and scipy.
   */
  @ParameterizedTest
  @CsvSource({
    "0, 465.444, 430.391", "0.25, 139.494, 121.688", "0.5, 37.9961, 28.6658",
    "1, 10.3760, 6.34685", "2, 4.00887, 2.36229", "3, 2.57325, 1.53964"
  })
  void twoSidedRunLength_ofLimitFive_isTheReferences(double shift, double plain, double ahead) {
    Chart chart = new Chart(0.5, 5);
    assertThat(chart.twoSidedRunLength(shift, 0)).isCloseTo(plain, withPercentage(0.001));
    assertThat(chart.twoSidedRunLength(shift, 2.5)).isCloseTo(ahead, withPercentage(0.001));
  }

  /**
   * Computed apart, in Python with numpy and scipy; from 0.5 on the arm against the shift is mute.
   */
  @ParameterizedTest
  @CsvSource({
    "3, 0, 58.7979", "3, 0.25, 36.2410", "3, 0.5, 17.1985", "3, 0.75, 9.67039", "3, 1, 6.40309",
    "3, 1.5, 3.74910", "3, 2, 2.67969", "6, 0, 1276.56", "6, 0.25, 249.258", "6, 0.5, 51.3367",
    "8, 0, 9482.86", "8, 0.25, 736.120", "8, 0.5, 84.0006"
  })
  void twoSidedRunLength_ofOtherLimits_isTheReferences(double h, double shift, double expected) {
    assertThat(new Chart(0.5, h).twoSidedRunLength(shift, 0))
        .isCloseTo(expected, withPercentage(0.001));
  }

  /**
   * Designs for one false alarm in 1000 h at 2 s. Computed apart, in Python with numpy and scipy.
   */
  @ParameterizedTest
  @CsvSource({
    ".25, 23.4844, 607.60, 90.619, 47.340, 32.039, 19.502, 14.062, 9.1052, 6.7978",
    ".5, 12.5519, 7546.2, 188.16, 46.897, 25.475, 13.299, 9.0438, 5.5991, 4.1301",
    ".75, 8.5309, 32264, 972.25, 94.015, 30.868, 12.101, 7.5388, 4.3862, 3.1782",
    "1, 6.4101, 74757, 3855.1, 314.60, 57.386, 13.193, 7.1574, 3.8217, 2.6836"
  })
  void oneSidedRunLength_ofThousandHourDesigns_isTheReferences(
      double k,
      double h,
      double quarter,
      double half,
      double threeQuarters,
      double one,
      double oneAndAHalf,
      double two,
      double three,
      double four) {
    double[] shifts = {0.25, 0.5, 0.75, 1, 1.5, 2, 3, 4};
    double[] expected = {quarter, half, threeQuarters, one, oneAndAHalf, two, three, four};
    for (int i = 0; i < shifts.length; i++) {
      assertThat(new Chart(k, h).averageRunLength(shifts[i]))
          .isCloseTo(expected[i], withPercentage(0.01));
    }
  }

  /**
   * Hawkins 1993 as quoted in public, "about 370"; digits computed apart, in Python with numpy and
   * scipy.
   */
  @ParameterizedTest
  @CsvSource({
    "0.25, 8.01, 370.33", "0.5, 4.77, 368.56", "0.75, 3.34, 370.57",
    "1, 2.52, 372.82", "1.25, 1.99, 373.54", "1.5, 1.61, 376.34"
  })
  void twoSidedRunLength_ofHawkinsPairs_isAbout370(double k, double h, double expected) {
    assertThat(new Chart(k, h).twoSidedRunLength(0, 0)).isCloseTo(expected, withPercentage(0.01));
  }

  /** Published one-sided values in the examples of the R package spc, with their sources. */
  @ParameterizedTest
  @CsvSource({
    "Brook and Evans 1972, 0.5, 3, 0, 117.59, 0.01",
    "Brook and Evans 1972, 0.5, 3, 1.5, 3.75, 0.005",
    "Waldmann 1986, 0.5, 3, -0.5, 1963, 0.5",
    "Waldmann 1986, 0.5, 3, 0, 117.4, 0.3",
    "Waldmann 1986, 0.5, 3, 0.5, 17.35, 0.005",
    "Vance 1986, 0, 10, -0.25, 2071.51, 0.1",
    "Vance 1986, 0, 10, -0.125, 400.28, 0.005",
    "Vance 1986, 0, 10, 0, 124.66, 0.005",
    "Vance 1986, 0, 10, 0.125, 59.30, 0.006",
    "Vance 1986, 0, 10, 0.25, 36.71, 0.005",
    "Vance 1986, 0, 10, 0.5, 20.37, 0.005",
    "Vance 1986, 0, 10, 0.75, 14.06, 0.005",
    "Vance 1986, 0, 10, 1, 10.75, 0.005",
    "SAS/QC manual 1999, 0.25, 8, 2.5, 4.1500836225, 2e-7",
    "NIST/SEMATECH e-Handbook 6.3.2.3.1, 0.5, 4, 0, 336, 0.7",
    "NIST/SEMATECH e-Handbook 6.3.2.3.1, 0.5, 5, 0, 930, 1.9",
    "NIST/SEMATECH e-Handbook 6.3.2.3.1, 0.5, 4, 1, 8.38, 0.005",
    "NIST/SEMATECH e-Handbook 6.3.2.3.1, 0.5, 5, 1, 10.4, 0.05"
  })
  void oneSidedRunLength_isThePublished(
      String source, double k, double h, double shift, double published, double precision) {
    assertThat(new Chart(k, h).averageRunLength(shift))
        .as(source)
        .isCloseTo(published, org.assertj.core.api.Assertions.within(precision));
  }

  /** SAS/QC manual 1999 via spc: the same chart with a head start of 0.1. */
  @Test
  void oneSidedRunLength_fromASmallHeadStart_isThePublished() {
    assertThat(new Chart(0.25, 8).averageRunLength(2.5, 0.1))
        .isCloseTo(4.1061588131, org.assertj.core.api.Assertions.within(1e-7));
  }

  /**
   * Waldmann 1986 via spc, 65.4; the digits after it computed apart, in Python with numpy and
   * scipy.
   */
  @Test
  void twoSidedRunLength_ofAWiderAllowance_isWaldmanns() {
    assertThat(new Chart(0.6, 3).twoSidedRunLength(-0.2, 0))
        .isCloseTo(65.465, withPercentage(0.001));
  }

  /**
   * Computed apart, in Python with numpy and scipy: the chain of Brook and Evans 1972 by number of
   * states.
   */
  @ParameterizedTest
  @CsvSource({
    "5, 113.474, 3.77479",
    "10, 116.632, 3.75488",
    "15, 117.179, 3.75159",
    "20, 117.365, 3.75048",
    "25, 117.449, 3.74998"
  })
  void chain_ofFewStates_isTheReferences(int states, double quiet, double shifted) {
    Chart chart = new Chart(0.5, 3);
    assertThat(chart.averageRunLengthByChain(0, states)).isCloseTo(quiet, withPercentage(0.001));
    assertThat(chart.averageRunLengthByChain(1.5, states))
        .isCloseTo(shifted, withPercentage(0.001));
  }

  @Test
  void chainAndIntegral_agree_overAGrid() {
    for (double shift = 0; shift <= 2; shift += 0.5) {
      Chart chart = new Chart(0.5, 4);
      double coarse = chart.averageRunLengthByChain(shift, 60);
      double fine = chart.averageRunLengthByChain(shift, 120);
      double ratio = Math.pow(119.0 / 239, 2);
      double extrapolated = (fine - coarse * ratio) / (1 - ratio);
      assertThat(chart.averageRunLength(shift)).isCloseTo(extrapolated, withPercentage(1e-3));
    }
  }

  @ParameterizedTest
  @CsvSource({"-0.1, 5", "NaN, 5", "0.5, 0", "0.5, NaN", "0.5, Infinity"})
  void chart_ofImpossibleDesign_isRefused(double k, double h) {
    assertThatThrownBy(() -> new Chart(k, h))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage(
            String.format(
                Locale.ROOT,
                "a CUSUM needs an allowance of 0 or more and a limit above 0, not %s and %s",
                k,
                h));
  }
}
