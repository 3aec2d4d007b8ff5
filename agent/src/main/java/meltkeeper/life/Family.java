package meltkeeper.life;

import org.hipparchus.special.Erf;

/**
 * The shape of log life: log T = location + scale · z, z of a standard distribution. Both have
 * log-concave densities, which is what makes the maximum of the likelihood unique (Burridge 1981,
 * from memory).
 */
public enum Family {
  /** z of the smallest extreme value distribution; scale is 1/β. */
  WEIBULL {
    @Override
    double logDensity(double z) {
      return z - Math.exp(z);
    }

    @Override
    double slope(double z) {
      return -Math.expm1(z);
    }

    @Override
    double curvature(double z) {
      return -Math.exp(z);
    }

    @Override
    double logSurvival(double z) {
      return -Math.exp(z);
    }
  },
  /** z standard normal. */
  LOGNORMAL {
    @Override
    double logDensity(double z) {
      return -z * z / 2 - LOG_SQRT_2PI;
    }

    @Override
    double slope(double z) {
      return -z;
    }

    @Override
    double curvature(double z) {
      return -1;
    }

    @Override
    double logSurvival(double z) {
      return Math.log(Erf.erfc(z / Math.sqrt(2)) / 2);
    }
  };

  private static final double LOG_SQRT_2PI = Math.log(2 * Math.PI) / 2;

  /** log g(z). */
  abstract double logDensity(double z);

  /** d log g / dz. */
  abstract double slope(double z);

  /** d² log g / dz². */
  abstract double curvature(double z);

  /** log P(Z > z). */
  abstract double logSurvival(double z);
}
