package meltkeeper.jam.score;

import java.util.function.DoubleUnaryOperator;
import org.hipparchus.special.Beta;
import org.hipparchus.special.Gamma;

/** Exact confidence bounds for counts and shares. */
public record Bounds(double low, double high) {

  private static final double TAIL = 0.025;
  private static final int STEPS = 200;

  /** Two-sided 95 % for the mean of a Poisson count (Garwood 1936). */
  public static Bounds ofCount(int count) {
    double low = count == 0 ? 0 : root(m -> Gamma.regularizedGammaP(count, m) - TAIL, most(count));
    return new Bounds(low, upper(count, TAIL));
  }

  /** One-sided 95 % upper bound for the mean of a Poisson count. */
  public static double upperOfCount(int count) {
    return upper(count, 2 * TAIL);
  }

  private static double upper(int count, double tail) {
    return root(m -> Gamma.regularizedGammaP(count + 1.0, m) - (1 - tail), most(count));
  }

  private static double most(int count) {
    return count + 10 * Math.sqrt(count + 1.0) + 20;
  }

  /** Two-sided 95 % for a share, hits of tries (Clopper and Pearson 1934). */
  public static Bounds ofShare(int hits, int tries) {
    double low =
        hits == 0 ? 0 : root(p -> Beta.regularizedBeta(p, hits, tries - hits + 1.0) - TAIL, 1);
    double high =
        hits == tries
            ? 1
            : root(p -> Beta.regularizedBeta(p, hits + 1.0, tries - hits) - (1 - TAIL), 1);
    return new Bounds(low, high);
  }

  /** Where a rising function crosses zero between 0 and {@code most}. */
  private static double root(DoubleUnaryOperator rising, double most) {
    double low = 0;
    double high = most;
    for (int i = 0; i < STEPS && high - low > 1e-13 * most; i++) {
      double middle = (low + high) / 2;
      if (rising.applyAsDouble(middle) < 0) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return (low + high) / 2;
  }
}
