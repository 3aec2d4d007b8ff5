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
}
