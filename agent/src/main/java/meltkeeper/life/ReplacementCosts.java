package meltkeeper.life;

import meltkeeper.part.Costs;
import meltkeeper.part.Kind;

/**
 * What the two ways to end a part's life cost.
 *
 * @param planned price and labour of a swap in good time
 * @param failure the same and the cost of a jam; not below {@code planned}
 */
public record ReplacementCosts(double planned, double failure) {

  public ReplacementCosts {
    if (!(planned >= 0) || !(failure >= planned) || Double.isInfinite(failure)) {
      throw new IllegalArgumentException(
          "a failure costs at least what a planned swap does, and both are 0 or more, not "
              + planned
              + " and "
              + failure);
    }
  }

  /** Of a kind of part in a shop. */
  public static ReplacementCosts of(Kind kind, Costs costs) {
    double planned = kind.price() + costs.labourPerHour() * kind.swapMinutes() / 60;
    return new ReplacementCosts(planned, planned + costs.jam());
  }

  /** What a failure costs above a planned swap. */
  public double penalty() {
    return failure - planned;
  }
}
