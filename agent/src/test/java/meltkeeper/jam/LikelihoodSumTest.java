package meltkeeper.jam;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;

/** Ratios of a normal that is shifted by a known amount, whose mean in health is known. */
class LikelihoodSumTest {

  private static final double SHIFT = 0.8;
  private static final double LIMIT = 15;
  private static final long SEED = 3;

  private final Random random = new Random(SEED);
  private final LikelihoodSum sum = new LikelihoodSum();

  /**
   * The mean of the ratio in health is the divergence, shift^2 / 2 (Kullback 1959, from memory).
   */
  @Test
  void health_speaksPerWindowByTheDivergence() {
    feed(0, 20_000);
    assertThat(sum.healthPerWindow()).as("seed %d", SEED).isCloseTo(0.32, within(0.12));
  }

  @Test
  void trueRatios_areTrustedAfterHealthAndAlarmOnAShift() {
    feed(0, 2000);
    assertThat(sum.evidence(LIMIT)).as("seed %d", SEED).isLessThan(0.6);
    feed(SHIFT, 200);
    assertThat(sum.evidence(LIMIT)).as("seed %d", SEED).isGreaterThan(1);
  }

  @Test
  void ratiosThatMeanNothing_areNotTrusted() {
    for (int window = 0; window < 3000; window++) {
      sum.take(random.nextGaussian(), LIMIT);
    }
    assertThat(sum.evidence(LIMIT)).as("seed %d", SEED).isLessThan(0.5);
  }

  private void feed(double mean, int windows) {
    for (int window = 0; window < windows; window++) {
      double x = mean + random.nextGaussian();
      sum.take(SHIFT * x - SHIFT * SHIFT / 2, LIMIT);
    }
  }
}
