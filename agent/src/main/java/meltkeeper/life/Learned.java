package meltkeeper.life;

import java.util.function.ToDoubleFunction;

/**
 * How much of what is known comes from the data and not from the belief: 1 − (posterior variance /
 * prior variance), at least 0; 0 is belief alone, 1 data alone.
 *
 * @param life of log characteristic life
 * @param shape of log shape
 * @param halving of the halving interval
 */
public record Learned(double life, double shape, double halving) {

  private static final double HARDLY = 0.05;

  static Learned between(Posterior prior, Posterior posterior) {
    return new Learned(
        share(lifeVariance(prior), lifeVariance(posterior)),
        share(variance(prior, Row::logShape), variance(posterior, Row::logShape)),
        share(variance(prior, Learned::halving), variance(posterior, Learned::halving)));
  }

  /** True when the halving interval is as it was believed to be. */
  public boolean halvingIsBelief() {
    return halving < HARDLY;
  }

  private static double halving(Row row) {
    return row.ageing().halvingKelvin();
  }

  private static double share(double before, double after) {
    return Math.max(0, 1 - after / before);
  }

  private static double lifeVariance(Posterior posterior) {
    double mean = posterior.expectation((row, logLife) -> logLife);
    return posterior.expectation((row, logLife) -> (logLife - mean) * (logLife - mean));
  }

  private static double variance(Posterior posterior, ToDoubleFunction<Row> quantity) {
    double mean = posterior.expectation(quantity);
    return posterior.expectation(row -> Math.pow(quantity.applyAsDouble(row) - mean, 2));
  }
}
