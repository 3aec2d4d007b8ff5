package meltkeeper.jam.sim;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.data.Percentage.withPercentage;

import meltkeeper.jam.runlength.Chart;
import meltkeeper.jam.runlength.Run;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The physics of a clog, computed apart in Python with numpy and scipy from the same law. */
class BoreTest {

  private static final double TENTH = 0.1;

  /** Hagen and Poiseuille for n = 1; for a power law, {@code (r/r0)^-(3n+1)}. */
  @ParameterizedTest
  @CsvSource({
    ".95, 1.22774, 1.13682, 1.11088",
    ".9, 1.52416, 1.30135, 1.24109",
    ".8, 2.44141, 1.74693, 1.58003",
    ".7, 4.16493, 2.43924, 2.07754",
    ".6, 7.71605, 3.58610, 2.84964",
    ".5, 16.0000, 5.65685, 4.14106"
  })
  void pressureOfANarrowerBore_isTheReferences(
      double radius, double newtonian, double half, double third) {
    assertThat(Bore.pressure(radius, 1)).isCloseTo(newtonian, within(0.0000051));
    assertThat(Bore.pressure(radius, 0.5)).isCloseTo(half, within(0.0000051));
    assertThat(Bore.pressure(radius, 0.35)).isCloseTo(third, within(0.0000051));
  }

  /** Clean load as a share of the grip, index, and the radii at which so much still passes. */
  @ParameterizedTest
  @CsvSource({
    ".2, 1, .66874, .66022, .65136, .61169, .56234, .37606",
    ".2, .5, .52531, .51994, .51435, .48914, .45731, .33145",
    ".3, 1, .74008, .73065, .72084, .67695, .62233, .41618",
    ".3, .5, .61780, .61150, .60492, .57527, .53783, .38981",
    ".5, 1, .84090, .83018, .81904, .76916, .70711, .47287",
    ".5, .5, .75786, .75012, .74206, .70568, .65975, .47818"
  })
  void shareThroughANarrowerBore_isTheReferences(
      double load,
      double index,
      double onset,
      double nineteen,
      double eighteen,
      double fourteen,
      double half,
      double tenth) {
    double[] radii = {onset, nineteen, eighteen, fourteen, half, tenth};
    double[] shares = {1, 0.95, 0.9, 0.7, 0.5, 0.1};
    for (int i = 0; i < radii.length; i++) {
      assertThat(Bore.share(1, load * Bore.pressure(radii[i], index), index))
          .as("through %s", radii[i])
          .isCloseTo(shares[i], within(0.0001));
    }
  }

  /**
   * An ideal CUSUM, windows of 10 s, k = 0.5, one false alarm in 1000 h, zero when slip begins:
   * index, minutes to closure, spread, minutes to the alarm, minutes from there to a tenth.
   */
  @ParameterizedTest
  @CsvSource({
    "1, 10, .06, .809, 2.430",
    "1, 60, .03, 1.343, 18.091",
    "1, 60, .06, 1.957, 17.477",
    "1, 60, .12, 2.930, 16.504",
    "1, 240, .06, 4.313, 73.423",
    ".5, 10, .06, .673, 1.607",
    ".5, 60, .03, 1.099, 12.581",
    ".5, 60, .06, 1.585, 12.094",
    ".5, 60, .12, 2.352, 11.328",
    ".5, 240, .06, 3.396, 51.322"
  })
  void idealCusum_onAnEvenClosure_leadsAsTheReferences(
      double index, double closure, double spread, double alarm, double lead) {
    double onset = closure * (1 - Math.pow(0.3, 1 / (3 * index + 1)));
    double run =
        new Run(new Chart(0.5, 10.94247))
            .meanToAlarm(
                n -> {
                  double radius = 1 - (onset + (n - 0.5) / 6) / closure;
                  double load = 0.3 * Bore.pressure(Math.max(0.01, radius), index);
                  return (1 - Bore.share(1, load, index)) / spread;
                });
    double stall =
        closure * (1 - Math.pow(0.3 * Math.pow(TENTH, index), 1 / (3 * index + 1))) - onset;
    assertThat(run / 6).isCloseTo(alarm, within(0.001));
    assertThat(stall - run / 6).isCloseTo(lead, within(0.002));
    assertThat(stall).isCloseTo(alarm + lead, withPercentage(0.1));
  }
}
