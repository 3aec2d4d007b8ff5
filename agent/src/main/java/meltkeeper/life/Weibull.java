package meltkeeper.life;

import org.hipparchus.special.Gamma;

/**
 * A Weibull life: R(t) = exp(−(t/η)^β). Formulas: elementary, from R and the incomplete gamma
 * function; they hold for every age from 0 to infinity.
 *
 * @param logLife log η, η the characteristic life in hours
 * @param logShape log β
 */
public record Weibull(double logLife, double logShape) {

  public Weibull {
    if (!Double.isFinite(logLife) || !Double.isFinite(logShape)) {
      throw new IllegalArgumentException(
          "a life has finite parameters, not " + logLife + " and " + logShape);
    }
  }

  /** Of characteristic life and shape, both above 0. */
  public static Weibull of(double lifeHours, double shape) {
    return new Weibull(Math.log(lifeHours), Math.log(shape));
  }

  /** η, hours. */
  public double lifeHours() {
    return Math.exp(logLife);
  }

  /** β. */
  public double shape() {
    return Math.exp(logShape);
  }

  /** (t/η)^β. */
  public double cumulativeHazard(double hours) {
    return Math.exp(shape() * (Math.log(hours) - logLife));
  }

  /** R(t), the share alive at that age. */
  public double survival(double hours) {
    return Math.exp(-cumulativeHazard(hours));
  }

  /** h(t), failures per hour among those alive. */
  public double hazard(double hours) {
    return Math.exp(logShape + (shape() - 1) * (Math.log(hours) - logLife) - logLife);
  }

  /** The age by which {@code share} (0 to 1) have failed, hours. */
  public double quantile(double share) {
    return Math.exp(logLife + Math.log(-Math.log1p(-share)) / shape());
  }

  /** η Γ(1 + 1/β), hours. */
  public double meanHours() {
    return Math.exp(logLife + Gamma.logGamma(1 + 1 / shape()));
  }

  /** ∫ R from 0 to t = η Γ(1 + 1/β) P(1/β, (t/η)^β), hours. */
  public double meanHoursUntil(double hours) {
    return meanHours() * Gamma.regularizedGammaP(1 / shape(), cumulativeHazard(hours));
  }

  /** P(fails within {@code more} hours | alive at {@code age}). */
  public double failureWithin(double more, double age) {
    return -Math.expm1(cumulativeHazard(age) - cumulativeHazard(age + more));
  }

  /** Mean hours left of one alive at {@code age}. */
  public double meanResidualHours(double age) {
    double z = cumulativeHazard(age);
    return meanHours() * Math.exp(z) * Gamma.regularizedGammaQ(1 / shape(), z);
  }

  /** Hours that half of those alive at {@code age} still reach. */
  public double medianResidualHours(double age) {
    return Math.exp(logLife + Math.log(cumulativeHazard(age) + Math.log(2)) / shape()) - age;
  }
}
