package meltkeeper.life;

import static meltkeeper.life.Lives.LINER;
import static meltkeeper.life.Lives.alive;
import static meltkeeper.life.Lives.at;
import static meltkeeper.life.Lives.failed;
import static meltkeeper.life.Near.relatively;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import meltkeeper.part.Belief;
import meltkeeper.part.Exposure;
import meltkeeper.part.PriorPast;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class RiskTest {

  private static final PartLife FITTED = alive("L-7", at(220, 400));
  private static final Posterior POSTERIOR = posterior();
  private static final Risk RISK = new Risk(POSTERIOR);

  private static Posterior posterior() {
    List<PartLife> parts = new ArrayList<>(PosteriorTwoUnknownsTest.SIX);
    parts.add(FITTED);
    return Posterior.of(LINER, parts);
  }

  @Test
  void longerBatch_riskRises_from0To1() {
    double before = 0;
    for (double hours : new double[] {0.1, 1, 10, 100, 1000, 100_000}) {
      Estimate risk = RISK.ofPart(FITTED, at(220, hours));
      assertThat(risk.mean()).isGreaterThan(before).isLessThanOrEqualTo(1);
      assertThat(risk.p5()).isLessThanOrEqualTo(risk.p50());
      assertThat(risk.p50()).isLessThanOrEqualTo(risk.p95());
      before = risk.mean();
    }
    assertThat(before).isGreaterThan(0.999);
  }

  @Test
  void anyOfNone_noRisk_andOneSureFailureIsSure() {
    assertThat(Risk.ofAny(List.of())).isZero();
    assertThat(Risk.ofAny(List.of(0.2, 1.0))).isEqualTo(1);
  }

  @Test
  void survival_fallsWithAge() {
    double before = 1;
    for (double hours : new double[] {1, 100, 400, 700, 2000}) {
      Estimate alive = POSTERIOR.aliveAt(hours);
      assertThat(alive.mean()).isLessThan(before);
      assertThat(alive.p5()).isLessThanOrEqualTo(alive.p95());
      before = alive.mean();
    }
  }

  @Test
  void hotterBatch_riskRises() {
    assertThat(RISK.meanOfPart(FITTED, at(237, 24)))
        .isGreaterThan(RISK.meanOfPart(FITTED, at(220, 24)));
  }

  @Test
  void nothingToPrint_noRisk() {
    assertThat(RISK.ofPart(FITTED, Exposure.NONE)).isEqualTo(new Estimate(0, 0, 0, 0));
    assertThat(RISK.ofUnseenPart(FITTED, Exposure.NONE)).isZero();
  }

  @Test
  void newPart_likelierToGetThrough() {
    assertThat(RISK.ofNewPart(at(220, 48)).mean())
        .isLessThan(RISK.meanOfPart(FITTED, at(220, 48)) / 4);
  }

  @ParameterizedTest
  @ValueSource(doubles = {0.01, 0.05, 0.3})
  void longestBatch_runsExactlyIntoTheLimit(double limit) {
    double hours = RISK.longestHours(FITTED, at(230, 1), limit);
    relatively(RISK.meanOfPart(FITTED, at(230, hours)), limit, 1e-3);
  }

  @Test
  void longestBatch_impossibleLimit_saysWhatIsAllowed() {
    assertThatThrownBy(() -> RISK.longestHours(FITTED, at(230, 1), 5))
        .hasMessage("a risk lies between 0 and 1, not 5.0");
  }

  @Test
  void uncertainPast_raisesTheRisk_asMoreHoursDo() {
    PartLife known = FITTED.withPast(new PriorPast(120, 0, 220));
    PartLife uncertain = FITTED.withPast(new PriorPast(120, 60, 220));
    double without = RISK.meanOfPart(FITTED, at(220, 24));
    double with = RISK.ofPart(uncertain, at(220, 24)).mean();
    assertThat(with).isGreaterThan(without);
    // 60 h of doubt about a past of 120 h move the risk little, and not its order.
    relatively(with, RISK.meanOfPart(known, at(220, 24)), 0.05);
    assertThat(RISK.ofUnseenPart(uncertain, at(220, 24))).isBetween(without / 2, 2 * with);
  }

  @Test
  void swapFirst_atTheAdvisedAge_isIndifferentForAShortBatch() {
    ReplacementCosts costs = new ReplacementCosts(10.75, 28.75);
    AgeReplacement.Cheapest cheapest = AgeReplacement.of(Weibull.of(600, 2.5), costs).cheapest();
    Posterior sure = Posterior.of(new Belief(600, 0.001, 2.5, 0.001, 10, 0.001, 220), List.of());
    PartLife due = alive("L-8", at(220, cheapest.at().orElseThrow()));
    // The condition of the optimum, (Cf − Cp) h(t) = C(t), as one hour of work.
    assertThat(SwapFirst.of(sure, due, at(220, 1), costs).saving()).isCloseTo(0, within(2e-4));
    PartLife older = alive("L-8", at(220, 700));
    PartLife younger = alive("L-8", at(220, 200));
    assertThat(SwapFirst.of(sure, older, at(220, 24), costs).saving()).isPositive();
    assertThat(SwapFirst.of(sure, younger, at(220, 24), costs).saving()).isNegative();
  }

  @Test
  void failureAmongTheData_raisesTheRiskOfTheOthers() {
    List<PartLife> worse = new ArrayList<>(POSTERIOR.parts());
    worse.add(failed("L-9", at(220, 200)));
    assertThat(new Risk(Posterior.of(LINER, worse)).meanOfPart(FITTED, at(220, 24)))
        .isGreaterThan(RISK.meanOfPart(FITTED, at(220, 24)));
  }
}
