package meltkeeper.life;

import static meltkeeper.life.Near.nearly;
import static meltkeeper.life.Near.published;
import static meltkeeper.life.Near.relatively;
import static org.assertj.core.api.Assertions.assertThat;

import java.util.Optional;
import meltkeeper.part.Costs;
import meltkeeper.part.Kind;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Values without a book were computed in R 4.2.2, each by a root and by a minimum. */
class AgeReplacementTest {

  private static AgeReplacement.Cheapest cheapest(double shape, double ratio) {
    return AgeReplacement.of(Weibull.of(1, shape), new ReplacementCosts(1, ratio)).cheapest();
  }

  @ParameterizedTest
  @CsvSource({
    "1.5, 2, 2.17464138, 2.21199980, 2.21546433",
    "1.5, 5, 0.675491992, 4.93129919, 5.53866084",
    "1.5, 10, 0.378144492, 8.30161632, 11.0773217",
    "1.5, 20, 0.226119875, 13.5523381, 22.1546433",
    "2, 2, 1.09079697, 2.18159394, 2.25675833",
    "2, 5, 0.510655224, 4.08524179, 5.64189584",
    "2, 10, 0.336451191, 6.05612144, 11.2837917",
    "2, 20, 0.230426798, 8.75621833, 22.5675833",
    "2.5, 2, 0.883601677, 2.07646591, 2.25412100",
    "2.5, 5, 0.493046958, 3.46204274, 5.63530249",
    "2.5, 10, 0.354574410, 4.75054680, 11.2706050",
    "2.5, 20, 0.262381626, 6.38401263, 22.5412100",
    "3, 2, 0.810342027, 1.96996260, 2.23969304",
    "3, 5, 0.502609582, 3.03139670, 5.59923261",
    "3, 10, 0.382455531, 3.94935030, 11.1984652",
    "3, 20, 0.297770471, 5.05403343, 22.3969304",
    "4, 2, 0.766113237, 1.79861782, 2.20652530",
    "4, 5, 0.538402120, 2.49712491, 5.51631326",
    "4, 10, 0.439097187, 3.04778596, 11.0326265",
    "4, 20, 0.364100812, 3.66841564, 22.0652530"
  })
  void wearingPart_cheapestAge_grid(
      double shape, double ratio, double age, double cost, double waiting) {
    AgeReplacement.Cheapest cheapest = cheapest(shape, ratio);
    nearly(cheapest.at().orElseThrow(), age);
    nearly(cheapest.costPerHour(), cost);
    nearly(cheapest.waitingPerHour(), waiting);
  }

  @Test
  void documentedCase_cheapestAge_published() {
    // Documentation of the Python package reliability: shape 2.5, 1000 h, costs 1 and 5.
    AgeReplacement replacement =
        AgeReplacement.of(Weibull.of(1000, 2.5), new ReplacementCosts(1, 5));
    published(replacement.cheapest().at().orElseThrow(), 493.05, 2);
    published(replacement.cheapest().costPerHour(), 0.0035, 4);
    nearly(replacement.costPerHour(500), 0.00346249291);
    nearly(replacement.costPerHour(1000), 0.00451640550);
  }

  @Test
  void reliabilityHotwireCase_cheapestAge() {
    // Case stated in Reliability HotWire 96 (2009): shape 3, 150 days, costs 2 and 8.
    AgeReplacement.Cheapest cheapest =
        AgeReplacement.of(Weibull.of(150, 3), new ReplacementCosts(2, 8)).cheapest();
    nearly(cheapest.at().orElseThrow(), 83.1229825);
    nearly(cheapest.costPerHour(), 0.0368502945);
  }

  @ParameterizedTest
  @CsvSource({
    "0.8, 17.3061940, 5.91829671, 4.42119413, 4.41305061",
    "1, 14.5083319, 5.58197671, 5.00004540, 5.00000000"
  })
  void partThatDoesNotWear_costFallsWithAge_waitingIsCheapest(
      double shape, double atTenth, double atOne, double atTen, double waiting) {
    AgeReplacement replacement =
        AgeReplacement.of(Weibull.of(1, shape), new ReplacementCosts(1, 5));
    // The first value holds to 1e-5 only: below shape 1 the survival function starts steeply.
    relatively(replacement.costPerHour(0.1), atTenth, 1e-5);
    relatively(replacement.costPerHour(1), atOne, 1e-5);
    relatively(replacement.costPerHour(10), atTen, 1e-5);
    nearly(replacement.waitingPerHour(), waiting);
    assertThat(replacement.cheapest().at()).isEmpty();
  }

  @Test
  void fans_optimumWithoutSaving_waitingIsCheapest() {
    assertThat(cheapest(1.0584458, 2.6744186).at()).isEmpty();
  }

  @Test
  void failureThatCostsNoMore_waitingIsCheapest() {
    assertThat(cheapest(4, 1).at()).isEmpty();
  }

  @Test
  void posteriorPredictive_cheapestAge_referenceGrid() {
    // Price 4.50, a quarter of an hour at 25, a jam 18.
    ReplacementCosts costs =
        ReplacementCosts.of(
            new Kind(
                "liner", 4.5, 15, Optional.of(Lives.LINER), Optional.empty(), Optional.empty()),
            new Costs("EUR", 25, 18));
    nearly(costs.planned(), 10.75);
    nearly(costs.failure(), 28.75);
    AgeReplacement replacement =
        AgeReplacement.of(Posterior.of(Lives.LINER, PosteriorTwoUnknownsTest.SIX), costs);
    AgeReplacement.Cheapest cheapest = replacement.cheapest();
    relatively(cheapest.at().orElseThrow(), 468.933472, 1e-4);
    relatively(1000 * cheapest.costPerHour(), 34.7780774, 1e-4);
    double[][] curve = {
      {300, 41.1138}, {400, 35.63958}, {500, 34.9256}, {600, 36.93509}, {800, 42.23298}
    };
    for (double[] point : curve) {
      relatively(1000 * replacement.costPerHour(point[0]), point[1], 1e-4);
    }
    relatively(1000 * cheapest.waitingPerHour(), 45.37459, 1e-4);
    relatively(costs.failure() / cheapest.waitingPerHour(), 633.6146, 1e-4);
  }
}
