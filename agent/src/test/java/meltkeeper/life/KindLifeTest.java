package meltkeeper.life;

import static meltkeeper.life.Lives.LINER;
import static meltkeeper.life.Lives.alive;
import static meltkeeper.life.Lives.at;
import static meltkeeper.life.Lives.failed;
import static meltkeeper.life.Near.relatively;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import meltkeeper.part.Belief;
import meltkeeper.part.Exposure;
import org.junit.jupiter.api.Test;

class KindLifeTest {

  private static final ReplacementCosts COSTS = new ReplacementCosts(10.75, 28.75);

  private static KindLife answer(List<PartLife> parts) {
    return KindLife.of(Posterior.of(LINER, parts), COSTS, Optional.empty());
  }

  @Test
  void noFailureYet_answer_saysSoAndShowsTheBelief() {
    KindLife life = answer(PosteriorTwoUnknownsTest.SURVIVORS);
    assertThat(life.notes()).anyMatch(note -> note.startsWith("no part has failed yet"));
    assertThat(life.failures()).isZero();
    assertThat(life.parts()).isEqualTo(3);
    relatively(life.believed().lifeHours().p50(), 600, 1e-6);
    assertThat(life.lifeHours().p50()).isGreaterThan(life.believed().lifeHours().p50());
  }

  @Test
  void noPart_answer_isTheBelief() {
    KindLife life = answer(List.of());
    assertThat(life.notes()).containsExactly("no part has run yet: this is the belief alone");
    assertThat(life.learned().life()).isZero();
  }

  @Test
  void oneTemperature_answer_saysThatHalvingIsBelief() {
    KindLife life = answer(PosteriorTwoUnknownsTest.SIX);
    assertThat(life.notes()).anyMatch(note -> note.contains("all parts ran at one temperature"));
    assertThat(life.learned().halvingIsBelief()).isTrue();
  }

  @Test
  void wideTemperatures_answer_warnsOfTheHalvingRule() {
    KindLife life = answer(List.of(failed("L-1", at(200, 900)), failed("L-2", at(245, 90))));
    assertThat(life.notes()).anyMatch(note -> note.contains("45 K"));
  }

  @Test
  void warmingUp_answer_countsNoTemperature() {
    Exposure work = at(220, 600).plus(at(152, 2));
    assertThat(Notes.temperatureSpan(List.of(alive("L-1", work)))).isZero();
  }

  @Test
  void habit_twiceTheBestAge_saves() {
    Posterior posterior = Posterior.of(LINER, PosteriorTwoUnknownsTest.SIX);
    CalendarHabit habit = new CalendarHabit(at(220, 800));
    // R 4.2.2: 42.23298 by age 800, 34.7780774 at the best.
    relatively(1000 * habit.costPerHour(posterior, COSTS), 42.23298, 1e-4);
    Advice advice = KindLife.of(posterior, COSTS, Optional.of(habit)).advice();
    assertThat(advice.savingPer1000Hours().orElseThrow())
        .isCloseTo(42.23298 - 34.7780774, within(0.01));
    assertThat(advice.because()).contains("28.75");
    relatively(habit.meanAge(posterior), 800, 1e-9);
  }

  @Test
  void costlessJam_advice_isToWait() {
    Advice advice =
        KindLife.of(
                Posterior.of(LINER, PosteriorTwoUnknownsTest.SIX),
                new ReplacementCosts(10, 10),
                Optional.empty())
            .advice();
    assertThat(advice.replaceAt()).isEmpty();
    assertThat(advice.because()).contains("waiting is cheapest");
  }

  @Test
  void hotterDuty_sameHours_isDueEarlierByTheRatioOfTheHalvingInterval() {
    // Common practice, no source: one material at 225 degrees, a hotter one at 237.
    Posterior tenKelvin = Posterior.of(new Belief(600, 0.35, 2.5, 0.4, 10, 0.001, 220), List.of());
    PartLife fresh = alive("L-9", Exposure.NONE);
    Estimate cool = DueIn.hours(tenKelvin, fresh, 450, at(225, 1));
    Estimate half = DueIn.hours(tenKelvin, fresh, 450, at(225, 0.5).plus(at(237, 0.5)));
    relatively(cool.p50() / half.p50(), (1 + Math.pow(2, 1.2)) / 2, 1e-4);
  }

  @Test
  void partPastItsAge_isDueNow() {
    Posterior posterior = Posterior.of(LINER, PosteriorTwoUnknownsTest.SIX);
    PartLife old = alive("L-9", at(220, 700));
    assertThat(DueIn.hours(posterior, old, 450, at(220, 0.5)).mean()).isZero();
    relatively(DueIn.age(posterior, old).p50(), 700, 1e-9);
  }

  @Test
  void predictiveCheck_expectedFailures_matchThoseSeen() {
    PredictiveCheck check =
        PredictiveCheck.of(Posterior.of(LINER, PosteriorPropertyTest.shop(200, 5)));
    // For a Weibull fit the cumulative hazards sum to the failures: the score equation of log life.
    relatively(check.expected(), check.failures(), 0.05);
    double middle = check.places().stream().mapToDouble(p -> p.share()).average().orElseThrow();
    assertThat(middle).isBetween(0.2, 0.6);
  }
}
