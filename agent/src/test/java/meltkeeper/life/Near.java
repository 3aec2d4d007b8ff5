package meltkeeper.life;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

/** Closeness to a reference value, by the precision that the value was printed with. */
final class Near {

  private Near() {}

  /** Nine digits were printed; the sixth is asked for. */
  static void nearly(double actual, double expected) {
    relatively(actual, expected, 1e-6);
  }

  static void relatively(double actual, double expected, double tolerance) {
    assertThat(actual).isCloseTo(expected, within(Math.abs(expected) * tolerance));
  }

  /** Half a unit of the last digit that was published. */
  static void published(double actual, double expected, int decimals) {
    assertThat(actual).isCloseTo(expected, within(0.5000001 * Math.pow(10, -decimals)));
  }
}
