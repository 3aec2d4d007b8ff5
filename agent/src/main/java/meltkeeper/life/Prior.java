package meltkeeper.life;

import meltkeeper.part.Belief;
import org.hipparchus.distribution.continuous.NormalDistribution;

/** Log densities of what was believed before the parts spoke. */
final class Prior {

  private static final double LOG_SQRT_2PI = Math.log(2 * Math.PI) / 2;

  private final Belief belief;
  private final double logLife;
  private final double logShape;
  private final double logAboveLimit;

  Prior(Belief belief) {
    this.belief = belief;
    this.logLife = Math.log(belief.lifeHours());
    this.logShape = Math.log(belief.shape());
    this.logAboveLimit =
        Math.log(
            new NormalDistribution()
                .cumulativeProbability(
                    (belief.halving() - Belief.MIN_HALVING) / belief.halvingSpread()));
  }

  double logLifeMean() {
    return logLife;
  }

  double ofLogLife(double value) {
    return normal(value, logLife, belief.spread());
  }

  double ofLogShape(double value) {
    return normal(value, logShape, belief.shapeSpread());
  }

  double ofHalving(double kelvin) {
    return normal(kelvin, belief.halving(), belief.halvingSpread()) - logAboveLimit;
  }

  static double normal(double value, double mean, double spread) {
    double z = (value - mean) / spread;
    return -z * z / 2 - Math.log(spread) - LOG_SQRT_2PI;
  }
}
