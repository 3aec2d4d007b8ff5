package meltkeeper.life;

import static meltkeeper.life.Lives.LINER;
import static meltkeeper.life.Lives.alive;
import static meltkeeper.life.Lives.at;
import static meltkeeper.life.Lives.failed;
import static meltkeeper.life.Near.relatively;
import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.stream.Stream;
import meltkeeper.part.Exposure;
import meltkeeper.part.PriorPast;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What holds of any data. */
class PosteriorPropertyTest {

  /** A shop's parts: true life 600 h, shape 2.5, halving 10 K; some removed in good time. */
  static List<PartLife> shop(int parts, long seed) {
    Random random = new Random(seed);
    List<PartLife> lives = new ArrayList<>();
    for (int i = 0; i < parts; i++) {
      double celsius = 215 + 5 * random.nextInt(7);
      double rate = Thermal.halvingRate(celsius, 220, 10);
      double end = Weibull.of(600, 2.5).quantile(random.nextDouble()) / rate;
      double removed = (200 + 700 * random.nextDouble()) / rate;
      lives.add(
          end < removed
              ? failed("P-" + i, at(celsius, end))
              : alive("P-" + i, at(celsius, removed)));
    }
    return lives;
  }

  @ParameterizedTest(name = "seed {0}")
  @ValueSource(longs = {1, 2, 3})
  void orderOfParts_shuffled_sameAnswerToTheLastDigit(long seed) {
    List<PartLife> parts = shop(40, seed);
    Posterior first = Posterior.of(LINER, parts);
    Collections.shuffle(parts, new Random(seed));
    Posterior second = Posterior.of(LINER, parts);
    assertThat(second.lifeHours()).isEqualTo(first.lifeHours());
    assertThat(second.shape()).isEqualTo(first.shape());
    assertThat(second.halving()).isEqualTo(first.halving());
    assertThat(second.logEvidence()).isEqualTo(first.logEvidence());
  }

  @Test
  void noParts_posterior_isTheBelief() {
    Posterior belief = Posterior.of(LINER, List.of());
    relatively(belief.lifeHours().p50(), 600, 1e-6);
    // Normal quantile 1.644854 (any table).
    relatively(belief.lifeHours().p95(), 600 * Math.exp(1.644854 * 0.35), 1e-5);
    relatively(belief.shape().p50(), 2.5, 1e-4);
    // Mean of a normal(10, 3) cut below 3, computed in R 4.2.2.
    relatively(belief.halving().mean(), 10.0794455, 1e-5);
    relatively(
        Math.sqrt(
            belief.expectation(row -> Math.pow(row.ageing().halvingKelvin() - 10.0794455, 2))),
        2.90474960,
        1e-5);
    relatively(belief.logEvidence() + 1, 1, 1e-6);
  }

  @ParameterizedTest
  @ValueSource(ints = {1, 10, 100, 1000})
  void manyParts_posterior_closesInOnTheTruth(int count) {
    Posterior posterior = Posterior.of(LINER, shop(count, 7));
    assertThat(posterior.lifeHours().p5()).isLessThan(600);
    assertThat(posterior.lifeHours().p95()).isGreaterThan(600);
    assertThat(posterior.shape().p5()).isLessThan(2.5);
    assertThat(posterior.shape().p95()).isGreaterThan(2.5);
    assertThat(posterior.halving().p5()).isLessThan(10);
    assertThat(posterior.halving().p95()).isGreaterThan(10);
    double weights = posterior.expectation(row -> 1);
    relatively(weights, 1, 1e-9);
  }

  @Test
  void thousandParts_posterior_isTheMaximumOfTheLikelihood() {
    List<PartLife> parts = shop(1000, 11);
    List<Observation> rows = new ArrayList<>();
    for (PartLife part : parts) {
      Exposure hot = part.spells().get(0).hot();
      double covariate = hot.bands().firstEntry().getValue().meanCelsius() - 220;
      rows.add(
          part.hasFailed()
              ? new Observation.Failed(hot.hotHours(), covariate, 1)
              : new Observation.Survived(hot.hotHours(), covariate, 1));
    }
    Maximum fit = (Maximum) LifeRegression.onCovariate(Family.WEIBULL, rows).fit();
    Posterior posterior = Posterior.of(LINER, parts);
    // The belief has the weight of a few parts among hundreds of failures.
    relatively(posterior.lifeHours().p50(), fit.lifeHours(), 0.01);
    relatively(posterior.shape().p50(), fit.shape(), 0.02);
    relatively(posterior.halving().p50(), fit.halvingKelvin().orElseThrow(), 0.02);
  }

  static Stream<Arguments> absurd() {
    List<PartLife> sameAge = new ArrayList<>();
    List<PartLife> immortal = new ArrayList<>();
    for (int i = 0; i < 300; i++) {
      sameAge.add(failed("A-" + i, at(220, 500)));
      immortal.add(alive("A-" + i, at(240, 900_000)));
    }
    return Stream.of(
        Arguments.of("one failure at 5 h", List.of(failed("A-1", at(220, 5)))),
        Arguments.of("a failure before any hot time", List.of(failed("A-1", Exposure.NONE))),
        Arguments.of("300 failures at one age", sameAge),
        Arguments.of("300 parts alive at 900,000 h", immortal),
        Arguments.of("a failure at 600 degrees", List.of(failed("A-1", at(599, 1)))),
        Arguments.of("a part on the shelf", List.of(alive("A-1", Exposure.NONE))),
        Arguments.of(
            "early and late failures",
            List.of(failed("A-1", at(220, 0.1)), failed("A-2", at(220, 90_000)))),
        Arguments.of(
            "a past without end",
            List.of(
                failed("A-1", at(220, 10)).withPast(new PriorPast(90_000, 90_000, 300)),
                alive("A-2", at(220, 10)).withPast(new PriorPast(0, 500, 220)))));
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("absurd")
  void absurdData_posterior_staysFinite(String what, List<PartLife> parts) {
    Posterior posterior = Posterior.of(LINER, parts);
    for (Estimate estimate :
        List.of(posterior.lifeHours(), posterior.shape(), posterior.halving())) {
      assertThat(estimate.mean()).isPositive().isFinite();
      assertThat(estimate.p5()).isLessThanOrEqualTo(estimate.p50());
      assertThat(estimate.p50()).isLessThanOrEqualTo(estimate.p95());
    }
    Estimate risk = new Risk(posterior).ofPart(alive("A-9", at(220, 300)), at(237, 24));
    assertThat(risk.mean()).isBetween(0.0, 1.0);
    assertThat(risk.p5()).isBetween(0.0, risk.p95());
    AgeReplacement.Cheapest cheapest =
        AgeReplacement.of(posterior, new ReplacementCosts(10.75, 28.75)).cheapest();
    assertThat(cheapest.costPerHour()).isPositive().isFinite();
    assertThat(KindLife.of(posterior, new ReplacementCosts(10.75, 28.75), Optional.empty()).notes())
        .isNotNull();
  }

  @Test
  void partAlive_atGreaterAge_believedToLastLonger() {
    double before = 0;
    for (double hours : new double[] {0, 200, 500, 800, 1500}) {
      double mean = Posterior.of(LINER, List.of(alive("L-1", at(220, hours)))).lifeHours().mean();
      assertThat(mean).isGreaterThan(before);
      before = mean;
    }
  }

  @Test
  void sameTemperatureEverywhere_halving_staysAtTheBelief() {
    Posterior posterior = Posterior.of(LINER, PosteriorTwoUnknownsTest.SIX);
    Posterior belief = Posterior.of(LINER, List.of());
    relatively(posterior.halving().mean(), belief.halving().mean(), 1e-6);
    relatively(posterior.halving().p5(), belief.halving().p5(), 1e-4);
    relatively(posterior.halving().p95(), belief.halving().p95(), 1e-4);
  }
}
