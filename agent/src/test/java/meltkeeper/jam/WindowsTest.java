package meltkeeper.jam;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.data.Percentage.withPercentage;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class WindowsTest {

  /** Computed apart, in Python, by {@code res / (v T sqrt 6)}: pulse mm, mm/s, 2, 10, 30, 60 s. */
  @ParameterizedTest
  @CsvSource({
    ".5, 2, .05103, .01021, .00340, .00170",
    "1, 1, .20412, .04082, .01361, .00680",
    "1, 2, .10206, .02041, .00680, .00340",
    "1, 5, .04082, .00816, .00272, .00136",
    "2, 2, .20412, .04082, .01361, .00680",
    "3, 1, .61237, .12247, .04082, .02041",
    "3, 2, .30619, .06124, .02041, .01021",
    "3, 5, .12247, .02449, .00816, .00408"
  })
  void spreadByCounting_isTheReferences(
      double pulse, double speed, double two, double ten, double thirty, double sixty) {
    double[] seconds = {2, 10, 30, 60};
    double[] expected = {two, ten, thirty, sixty};
    for (int i = 0; i < seconds.length; i++) {
      assertThat(Math.sqrt(Windows.countingVariance(pulse, speed * seconds[i])))
          .isCloseTo(expected[i], within(0.0000051));
    }
  }

  /** Any length, any phase of the wheel: counted with a fixed seed. */
  @Test
  void spreadByCounting_isWhatAWheelShows() {
    long seed = 5;
    Random random = new Random(seed);
    double pulse = 3;
    double squares = 0;
    int windows = 100_000;
    for (int i = 0; i < windows; i++) {
      double from = pulse * random.nextDouble();
      double length = 40 + pulse * random.nextDouble();
      double error = pulse * Math.floor((from + length) / pulse) - length;
      squares += error * error / (length * length);
    }
    assertThat(squares / windows)
        .as("seed %d", seed)
        .isCloseTo(Windows.countingVariance(pulse, 41.5), withPercentage(2));
  }
}
