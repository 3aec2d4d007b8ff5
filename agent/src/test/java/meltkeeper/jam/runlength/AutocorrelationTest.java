package meltkeeper.jam.runlength;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.data.Percentage.withPercentage;

import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * What correlated samples do to a chart made for independent ones, and that prewhitening undoes it
 * (Johnson and Bagshaw 1974 treat it; figures computed apart, in Python with numpy and scipy). By
 * simulation with a fixed seed: the tolerance is above four standard errors.
 */
class AutocorrelationTest {

  private static final long SEED = 7;

  @ParameterizedTest
  @CsvSource({
    "0.25, 4, 124.30",
    "0.25, 5, 238.37",
    "0.5, 4, 69.50",
    "0.5, 5, 105.56",
    "0.75, 4, 53.67",
    "0.75, 5, 69.08"
  })
  void runLength_ofCorrelatedSamples_isMuchShorter(double r, double h, double expected) {
    assertThat(meanRun(r, h, 30_000, x -> x))
        .as("seed %d", SEED)
        .isCloseTo(expected, withPercentage(3));
  }

  /** 930.9 is that of independent samples. */
  @Test
  void runLength_ofPrewhitenedSamples_isThatOfIndependentOnes() {
    double r = 0.5;
    double[] last = {Double.NaN};
    double mean =
        meanRun(
            r,
            5,
            8_000,
            x -> {
              double fresh = Double.isNaN(last[0]) ? x : (x - r * last[0]) / Math.sqrt(1 - r * r);
              last[0] = x;
              return fresh;
            });
    assertThat(mean).as("seed %d", SEED).isCloseTo(930.9, withPercentage(5));
  }

  private static double meanRun(double r, double h, int runs, DoubleUnaryOperator made) {
    Random random = new Random(SEED);
    long samples = 0;
    for (int run = 0; run < runs; run++) {
      double x = random.nextGaussian();
      double s = 0;
      while (true) {
        samples++;
        s = Math.max(0, s + made.applyAsDouble(x) - 0.5);
        x = r * x + Math.sqrt(1 - r * r) * random.nextGaussian();
        if (s > h) {
          break;
        }
      }
    }
    return (double) samples / runs;
  }
}
