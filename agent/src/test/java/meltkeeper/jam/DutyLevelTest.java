package meltkeeper.jam;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;

class DutyLevelTest {

  private static final double[] AT_ONCE = {1, 0, 0, 0};
  private static final double[] SLOWLY = {0.3, 0.4, 0.2, 0.1};
  private static final double NOISE = 1e-4;
  private static final double WANDER = 4e-6;

  /**
   * The local level model's steady state: the prediction's variance solves P^2 = q P + q r (the
   * scalar Riccati equation, worked out by hand).
   */
  @Test
  void steadyLevel_isPredictedWithTheVarianceOfTheRiccatiEquation() {
    DutyLevel level = new DutyLevel();
    double logDensity = 0;
    for (int window = 0; window < 500; window++) {
      logDensity = level.take(0.3, AT_ONCE, NOISE, WANDER, 0);
    }
    double variance = (WANDER + Math.sqrt(WANDER * WANDER + 4 * WANDER * NOISE)) / 2;
    double expected = -0.5 * Math.log(2 * Math.PI * (variance + NOISE));
    assertThat(logDensity).isCloseTo(expected, within(1e-9));
  }

  @Test
  void levelThatJumps_isFollowedThroughTheAnswersDelay() {
    DutyLevel level = settled(0.3);
    double[] history = {0.3, 0.3, 0.3, 0.3};
    for (int window = 0; window < 8; window++) {
      System.arraycopy(history, 0, history, 1, 3);
      history[0] = 0.22;
      level.take(seen(history), SLOWLY, NOISE, WANDER, 0.01);
    }
    assertThat(Math.abs(level.error())).isLessThan(1);
  }

  /** A fan that a model without delay takes for several jumps is one. */
  @Test
  void jumpSeenWithDelay_isMoreLikelyThroughItsKernelThanAtOnce() {
    double[] history = {0.3, 0.3, 0.3, 0.3};
    DutyLevel slow = settled(0.3);
    DutyLevel prompt = settled(0.3);
    double gain = 0;
    for (int window = 0; window < 5; window++) {
      System.arraycopy(history, 0, history, 1, 3);
      history[0] = 0.2;
      gain += slow.take(seen(history), SLOWLY, NOISE, WANDER, 0.01);
      gain -= prompt.take(seen(history), AT_ONCE, NOISE, WANDER, 0.01);
    }
    assertThat(gain).isGreaterThan(1);
  }

  @Test
  void jumpsInOneOfTwentyWindows_areLearned() {
    Random random = new Random(5);
    DutyLevel level = settled(0.3);
    double now = 0.3;
    for (int window = 0; window < 2000; window++) {
      now = random.nextInt(20) == 0 ? 0.3 + 0.1 * random.nextGaussian() : now;
      double shown = now + Math.sqrt(NOISE) * 0.5 * random.nextGaussian();
      level.take(shown, AT_ONCE, NOISE, 1e-8, level.jumpChance());
      level.learnJumps();
    }
    assertThat(level.jumpChance()).as("seed 5").isBetween(0.025, 0.06);
  }

  private static double seen(double[] history) {
    double sum = 0;
    for (int i = 0; i < 4; i++) {
      sum += SLOWLY[i] * history[i];
    }
    return sum;
  }

  private static DutyLevel settled(double duty) {
    DutyLevel level = new DutyLevel();
    for (int window = 0; window < 200; window++) {
      level.take(duty, SLOWLY, NOISE, WANDER, 0.01);
    }
    return level;
  }
}
