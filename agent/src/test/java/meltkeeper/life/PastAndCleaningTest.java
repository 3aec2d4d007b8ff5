package meltkeeper.life;

import static meltkeeper.life.Lives.FITTED;
import static meltkeeper.life.Lives.JAMMED;
import static meltkeeper.life.Lives.at;
import static meltkeeper.life.Near.nearly;
import static meltkeeper.life.Near.relatively;
import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import meltkeeper.part.Ending;
import meltkeeper.part.Exposure;
import meltkeeper.part.PriorPast;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Late entry and virtual age, at given parameters. Values from closed forms and R's integrate. */
class PastAndCleaningTest {

  private static double logLikelihood(PartLife part) {
    return new LifeLikelihood(List.of(part), Ageing.byHeatAlone(220, 10))
        .at(Math.log(2.5))
        .logLikelihood(Math.log(600));
  }

  private static PartLife withPast(Ending ending, double spread) {
    return PartLife.of("L-1", at(220, 480), ending).withPast(new PriorPast(120, spread, 220));
  }

  @Test
  void uncertainPast_stillFitted_delayedEntry() {
    // The fault would be 0.366966517, the plain chance to survive past and present.
    nearly(Math.exp(logLikelihood(withPast(FITTED, 60))), 0.374903621);
  }

  @Test
  void uncertainPast_failed_delayedEntry() {
    // The fault would be 0.00149719633.
    nearly(Math.exp(logLikelihood(withPast(JAMMED, 60))), 0.00153416063);
  }

  @Test
  void knownPast_conditionsOnIt() {
    Weibull life = Weibull.of(600, 2.5);
    nearly(Math.exp(logLikelihood(withPast(FITTED, 0))), life.survival(600) / life.survival(120));
  }

  @Test
  void uncertainPast_narrow_isAKnownOne() {
    relatively(logLikelihood(withPast(JAMMED, 0.01)), logLikelihood(withPast(JAMMED, 0)), 1e-7);
  }

  private static List<Spell> cleanedTwice(double restores) {
    return List.of(
        Spell.of(at(220, 300)),
        Spell.afterCleaning(restores, at(220, 200)),
        Spell.afterCleaning(restores, at(220, 120)));
  }

  @ParameterizedTest
  @CsvSource({"1, -8.15361106", "0.7, -7.46933451", "0, -6.51688238"})
  void cleanedAt300And500_failedAt620_kijimaTypeTwo(double restores, double expected) {
    PartLife part = PartLife.of("L-1", Exposure.NONE, JAMMED).withSpells(cleanedTwice(restores));
    nearly(logLikelihood(part), expected);
  }

  @Test
  void virtualAge_afterThreeCleanings_kijimaTypeTwo() {
    PartLife part =
        PartLife.of("L-1", Exposure.NONE, FITTED)
            .withSpells(
                List.of(
                    Spell.of(at(220, 100)),
                    Spell.afterCleaning(0.7, at(220, 80)),
                    Spell.afterCleaning(0.7, at(220, 60)),
                    Spell.afterCleaning(0.7, Exposure.NONE)));
    double age = Ageing.byHeatAlone(220, 10).age(part, 0);
    nearly(age, 27.9);
    nearly(Weibull.of(600, 2.5).failureWithin(24, age), 0.00173282813);
  }

  @Test
  void excusedJam_counts_asAlive() {
    PartLife excused = PartLife.of("L-1", at(220, 480), new Ending.Censored(Ending.Why.EXCUSED));
    assertThat(logLikelihood(excused))
        .isEqualTo(logLikelihood(PartLife.of("L-1", at(220, 480), FITTED)));
  }

  @Test
  void idleHours_withAFactor_ageFaster() {
    Spell spell = new Spell(at(220, 100), at(220, 40), 0);
    nearly(new Ageing(220, 10, 0, 2).hours(spell), 140);
    nearly(new Ageing(220, 10, 0, 1).hours(spell), 100);
  }

  @Test
  void uncertainPasts_posterior_denseGrid() {
    List<PartLife> parts =
        List.of(
            withPast(JAMMED, 60),
            PartLife.of("L-2", at(220, 300), FITTED).withPast(new PriorPast(200, 100, 220)),
            Lives.failed("L-3", at(220, 650)));
    Posterior posterior = Posterior.of(Lives.LINER, parts);
    double all = 0;
    double logLife = 0;
    double logShape = 0;
    int cells = 120;
    for (int i = 0; i < cells; i++) {
      for (int j = 0; j < cells; j++) {
        double u = Math.log(600) + 0.35 * 12 * ((i + 0.5) / cells - 0.5);
        double v = Math.log(2.5) + 0.4 * 12 * ((j + 0.5) / cells - 0.5);
        double z = Math.pow((u - Math.log(600)) / 0.35, 2) + Math.pow((v - Math.log(2.5)) / 0.4, 2);
        double density =
            Math.exp(-z / 2)
                * lateEntry(u, v, 480, 120, 60, true)
                * lateEntry(u, v, 300, 200, 100, false)
                * lateEntry(u, v, 650, 0, 0, true);
        all += density;
        logLife += density * u;
        logShape += density * v;
      }
    }
    // The grid, its sums and the normal past are all written apart from the code under test.
    relatively(posterior.expectation((row, life) -> life), logLife / all, 1e-5);
    relatively(posterior.expectation(Row::logShape), logShape / all, 1e-4);
  }

  private static double lateEntry(
      double u, double v, double hours, double mean, double sd, boolean failed) {
    double shape = Math.exp(v);
    double eta = Math.exp(u);
    double sum = 0;
    double all = 0;
    int steps = sd > 0 ? 60 : 1;
    for (int k = 0; k < steps; k++) {
      double past = sd > 0 ? (k + 0.5) / steps * (mean + 6 * sd) : mean;
      double weight = sd > 0 ? Math.exp(-Math.pow((past - mean) / sd, 2) / 2) : 1;
      double age = past + hours;
      double chance = Math.exp(Math.pow(past / eta, shape) - Math.pow(age / eta, shape));
      sum += weight * chance * (failed ? shape / eta * Math.pow(age / eta, shape - 1) : 1);
      all += weight;
    }
    return sum / all;
  }

  @Test
  void jamMadeGood_thenJammedAgain_countsAsTwoFailures() {
    PartLife part =
        PartLife.of("L-1", Exposure.NONE, JAMMED)
            .withSpells(
                List.of(
                    Spell.of(at(220, 300)).endedByFailure(),
                    Spell.afterCleaning(0.7, at(220, 320))));
    double shape = 2.5;
    double first = Math.pow(300 / 600.0, shape);
    double second = Math.pow(410 / 600.0, shape) - Math.pow(90 / 600.0, shape);
    double hazards =
        2 * Math.log(shape / 600) + (shape - 1) * (Math.log(300 / 600.0) + Math.log(410 / 600.0));
    // By hand: a hazard at each failure, survival of each spell from the age that it began at.
    nearly(logLikelihood(part), hazards - first - second);
    assertThat(part.failures()).isEqualTo(2);
  }
}
