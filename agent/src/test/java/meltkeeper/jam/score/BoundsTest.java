package meltkeeper.jam.score;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Computed apart in Python with scipy, by the chi-squared and beta distributions. */
class BoundsTest {

  @ParameterizedTest
  @CsvSource({
    "0, 2.99573, 0, 3.68888",
    "1, 4.74386, .02532, 5.57164",
    "2, 6.29579, .24221, 7.22469",
    "3, 7.75366, .61867, 8.76727",
    "5, 10.51303, 1.62349, 11.66833",
    "10, 16.96222, 4.79539, 18.39036",
    "20, 29.06202, 12.21652, 30.88838"
  })
  void boundsOfACount_areGarwoods(int count, double upper, double low, double high) {
    assertThat(Bounds.upperOfCount(count)).isCloseTo(upper, within(5.1e-6));
    assertThat(Bounds.ofCount(count).low()).isCloseTo(low, within(5.1e-6));
    assertThat(Bounds.ofCount(count).high()).isCloseTo(high, within(5.1e-6));
  }

  @ParameterizedTest
  @CsvSource({
    "18, 20, .68302, .98765", "27, 30, .73471, .97888", "45, 50, .78186, .96672",
    "90, 100, .82378, .95100", "95, 100, .88717, .98357", "98, 100, .92962, .99757",
    "190, 200, .90997, .97577", "285, 300, .91887, .97175", "475, 500, .92707, .96738",
    "16, 20, .56339, .94267", "99, 100, .94554, .99975"
  })
  void boundsOfAShare_areClopperAndPearsons(int hits, int tries, double low, double high) {
    assertThat(Bounds.ofShare(hits, tries).low()).isCloseTo(low, within(5.1e-6));
    assertThat(Bounds.ofShare(hits, tries).high()).isCloseTo(high, within(5.1e-6));
  }

  /** The worked example: 3 false alarms in 4000 h are .75 (.15467-2.19182) per 1000 h. */
  @org.junit.jupiter.api.Test
  void rateOfTheWorkedExample_isTheReferences() {
    Bounds count = Bounds.ofCount(3);
    assertThat(count.low() / 4).isCloseTo(0.15467, within(5e-6));
    assertThat(count.high() / 4).isCloseTo(2.19182, within(5e-6));
  }
}
