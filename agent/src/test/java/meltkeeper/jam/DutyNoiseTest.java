package meltkeeper.jam;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Random;
import org.junit.jupiter.api.Test;

/** Learned beside the level that it is for, on duties whose two parts are known. */
class DutyNoiseTest {

  private static final long SEED = 9;
  private static final double[] AT_ONCE = {1, 0, 0, 0};

  @Test
  void countingNoise_isLearnedAsFleeting() {
    DutyNoise noise = learned(0.008, 0);
    assertThat(Math.sqrt(noise.variance())).as("seed %d", SEED).isBetween(0.006, 0.010);
    assertThat(Math.sqrt(noise.wander())).as("seed %d", SEED).isLessThan(0.002);
  }

  @Test
  void movingAir_isLearnedAsWandering() {
    DutyNoise noise = learned(0.004, 0.006);
    assertThat(Math.sqrt(noise.variance())).as("seed %d", SEED).isBetween(0.003, 0.006);
    assertThat(Math.sqrt(noise.wander())).as("seed %d", SEED).isBetween(0.004, 0.009);
  }

  private static DutyNoise learned(double fleeting, double wandering) {
    Random random = new Random(SEED);
    DutyNoise noise = new DutyNoise();
    DutyLevel level = new DutyLevel();
    double now = 0.3;
    for (int window = 0; window < 4000; window++) {
      now += wandering * random.nextGaussian();
      double shown = now + fleeting * random.nextGaussian();
      boolean known = level.isKnown();
      level.take(shown, AT_ONCE, noise.variance(), noise.wander(), 0.003);
      if (known) {
        noise.learn(level.error(), window);
      }
    }
    return noise;
  }
}
