package meltkeeper.life;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** A tiny case of the calibration whose full table the quality profile prints. */
class CalibrationTest {

  @Test
  void twentyShopsWithTenFailures_intervalsHoldTheTruth_andAdviceBeatsTheCalendar() {
    Random random = new Random(20);
    List<ShopOutcome> outcomes = new ArrayList<>();
    for (int i = 0; i < 20; i++) {
      outcomes.add(ShopOutcome.of(SimulatedShop.drawn(Lives.LINER, 10, random)));
    }
    // Of 20 intervals at 90 %, 14 or more hold with probability 0.998 (binomial).
    assertThat(outcomes).filteredOn(ShopOutcome::lifeCovered).hasSizeGreaterThanOrEqualTo(14);
    assertThat(outcomes).filteredOn(ShopOutcome::shapeCovered).hasSizeGreaterThanOrEqualTo(14);
    assertThat(outcomes).filteredOn(ShopOutcome::halvingCovered).hasSizeGreaterThanOrEqualTo(14);
    assertThat(outcomes).allMatch(o -> o.regret() >= -1e-6, "no advice beats the truth");
    double regret = ShopOutcome.at(outcomes.stream().map(ShopOutcome::regret).toList(), 0.5);
    double habit = ShopOutcome.at(outcomes.stream().map(ShopOutcome::habitRegret).toList(), 0.5);
    assertThat(regret).isLessThan(0.03).isLessThan(habit);
  }
}
