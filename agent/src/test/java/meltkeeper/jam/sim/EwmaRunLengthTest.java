package meltkeeper.jam.sim;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.data.Percentage.withPercentage;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class EwmaRunLengthTest {

  /** Lucas and Saccucci 1990 and the SAS/QC manual, as transcribed in the R package spc. */
  @ParameterizedTest
  @CsvSource({
    "Lucas and Saccucci 1990, .5, 3.071, 0, 500, 0.5",
    "Lucas and Saccucci 1990, .5, 3.071, .25, 255, 0.5",
    "Lucas and Saccucci 1990, .5, 3.071, .5, 88.8, 0.05",
    "Lucas and Saccucci 1990, .5, 3.071, 1, 17.5, 0.05",
    "Lucas and Saccucci 1990, .5, 3.071, 2, 3.63, 0.005",
    "Lucas and Saccucci 1990, .03, 2.437, 0, 500, 0.5",
    "Lucas and Saccucci 1990, .03, 2.437, .25, 76.7, 0.05",
    "Lucas and Saccucci 1990, .03, 2.437, .5, 29.3, 0.05",
    "Lucas and Saccucci 1990, .03, 2.437, 1, 12.6, 0.05",
    "Lucas and Saccucci 1990, .03, 2.437, 2, 5.99, 0.005",
    "SAS/QC manual 1999, .25, 3, 1, 11.154267016, 1e-8"
  })
  void runLength_isThePublished(
      String source, double smooths, double limit, double shift, double mean, double precision) {
    assertThat(EwmaRunLength.of(smooths, limit, shift))
        .as(source)
        .isCloseTo(mean, within(precision));
  }

  /**
   * At one false alarm in 3.6 million samples a small share of the newest sees half a spread much
   * sooner. Computed apart, in Python with numpy and scipy.
   */
  @ParameterizedTest
  @CsvSource({
    ".05, 5.0138, 11099, 268.72, 59.087, 30.449, 15.660, 10.680",
    ".1, 5.0809, 50706, 1303.1, 131.50, 40.007, 14.537, 8.9940"
  })
  void runLength_ofAPrintersCharts_isTheReferences(
      double smooths,
      double limit,
      double quarter,
      double half,
      double threeQuarters,
      double one,
      double oneAndAHalf,
      double two) {
    double[] shifts = {0.25, 0.5, 0.75, 1, 1.5, 2};
    double[] expected = {quarter, half, threeQuarters, one, oneAndAHalf, two};
    for (int i = 0; i < shifts.length; i++) {
      assertThat(EwmaRunLength.of(smooths, limit, shifts[i]))
          .isCloseTo(expected[i], withPercentage(0.05));
    }
  }
}
