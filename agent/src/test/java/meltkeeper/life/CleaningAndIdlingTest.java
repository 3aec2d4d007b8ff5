package meltkeeper.life;

import static meltkeeper.life.Lives.JAMMED;
import static meltkeeper.life.Lives.LINER;
import static meltkeeper.life.Lives.at;
import static meltkeeper.life.Near.relatively;
import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import meltkeeper.part.Belief;
import meltkeeper.part.Exposure;
import org.junit.jupiter.api.Test;

class CleaningAndIdlingTest {

  private static final ReplacementCosts COSTS = new ReplacementCosts(10.75, 28.75);

  /** Nozzles cleaned at 400 h that then fail as if the cleaning had undone a share of it. */
  private static List<PartLife> cleaned(double trulyRestored, int count) {
    List<PartLife> parts = new ArrayList<>();
    Weibull life = Weibull.of(600, 4);
    for (int i = 0; i < count; i++) {
      double start = (1 - trulyRestored) * 400;
      double z = life.cumulativeHazard(start) - Math.log(1 - (i + 0.5) / count);
      double end = 600 * Math.pow(z, 1 / 4.0);
      parts.add(
          PartLife.of("N-" + i, Exposure.NONE, JAMMED)
              .withSpells(
                  List.of(Spell.of(at(220, 400)), Spell.afterCleaning(0.7, at(220, end - start)))));
      parts.add(Lives.failed("M-" + i, at(220, life.quantile((i + 0.5) / count))));
    }
    return parts;
  }

  @Test
  void cleaningsThatHelpLittle_lowerTheBelief() {
    Posterior posterior = Posterior.of(LINER, cleaned(0.2, 20));
    Estimate restores = CleaningOpinions.restores(posterior, 0.7);
    assertThat(restores.p50()).isLessThan(0.45);
  }

  @Test
  void cleaningsThatHelpMuch_raiseTheBelief() {
    Posterior posterior = Posterior.of(LINER, cleaned(0.95, 20));
    assertThat(CleaningOpinions.restores(posterior, 0.7).p50()).isGreaterThan(0.75);
  }

  @Test
  void noCleanedPart_beliefStays() {
    Posterior posterior = Posterior.of(LINER, PosteriorTwoUnknownsTest.SIX);
    Estimate restores = CleaningOpinions.restores(posterior, 0.7);
    relatively(restores.p50(), 0.7, 1e-3);
    // 1.644854 standard deviations of the log odds (any normal table); opinions end at 3.5.
    relatively(restores.p5(), Ageing.restored(0.7, -1.644854), 2e-3);
  }

  @Test
  void sureBelief_stays() {
    assertThat(Ageing.restored(1, -3)).isEqualTo(1);
    assertThat(Ageing.restored(0, 3)).isZero();
  }

  @Test
  void cleaningAsGoodAsNew_cheaperThanAPart_pays() {
    Posterior posterior = Posterior.of(LINER, PosteriorTwoUnknownsTest.SIX);
    Cleaning cleaning = Cleaning.of(posterior, COSTS, new CleaningCosts(2, 1));
    assertThat(cleaning.pays()).isTrue();
    assertThat(cleaning.costPer1000Hours()).isLessThan(cleaning.buyNewCostPer1000Hours());
  }

  @Test
  void cleaningAsGoodAsNew_asDearAsAPart_costsTheSame() {
    Posterior posterior = Posterior.of(LINER, PosteriorTwoUnknownsTest.SIX);
    // A perfect cleaning at the price of a planned swap is a planned swap.
    double[] rates =
        Cleaning.costPerHour(posterior, COSTS, new CleaningCosts(COSTS.planned(), 1), 468.933472);
    relatively(1000 * rates[0], 34.7780774, 1e-4);
    // One renewal more within an average over lives: equal only when the life is known.
    Posterior sure = Posterior.of(new Belief(600, 0.001, 2.5, 0.001, 10, 0.001, 220), List.of());
    double[] known = Cleaning.costPerHour(sure, COSTS, new CleaningCosts(COSTS.planned(), 1), 400);
    relatively(known[3], known[0], 1e-4);
  }

  @Test
  void cleaningThatUndoesNothing_doesNotPay() {
    Posterior posterior = Posterior.of(LINER, PosteriorTwoUnknownsTest.SIX);
    Cleaning cleaning = Cleaning.of(posterior, COSTS, new CleaningCosts(2, 0));
    assertThat(cleaning.pays()).isFalse();
    assertThat(cleaning.at()).isEmpty();
  }

  private static List<PartLife> idling(double trueFactor, long seed) {
    Random random = new Random(seed);
    List<PartLife> parts = new ArrayList<>();
    for (int i = 0; i < 60; i++) {
      double share = i % 2 == 0 ? 0.05 : 0.7;
      int rank = i / 2;
      double aged = Weibull.of(600, 4).quantile((rank + random.nextDouble()) / 30);
      double hours = aged / (1 - share + trueFactor * share);
      parts.add(
          PartLife.of("I-" + i, Exposure.NONE, JAMMED)
              .withSpells(List.of(new Spell(at(220, hours), at(220, share * hours), 0))));
    }
    return parts;
  }

  @Test
  void idleHoursThatAgeFaster_areFound() {
    HotIdle idle = HotIdle.of(LINER, idling(2.5, 1)).orElseThrow();
    assertThat(idle.probabilityFaster()).isGreaterThan(0.95);
    assertThat(idle.factor().p5()).isLessThan(2.5);
    assertThat(idle.factor().p95()).isGreaterThan(2.5);
    assertThat(idle.oddsForDifference()).isGreaterThan(10);
    assertThat(idle.share()).isBetween(0.05, 0.7);
  }

  @Test
  void idleHoursLikeOthers_areNot() {
    HotIdle idle = HotIdle.of(LINER, idling(1, 2)).orElseThrow();
    assertThat(idle.probabilityFaster()).isBetween(0.05, 0.95);
    assertThat(idle.oddsForDifference()).isLessThan(1.5);
  }

  @Test
  void noIdleHour_nothingToTell() {
    assertThat(HotIdle.of(LINER, PosteriorTwoUnknownsTest.SIX)).isEmpty();
  }
}
