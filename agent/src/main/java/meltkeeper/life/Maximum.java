package meltkeeper.life;

import java.util.List;
import java.util.OptionalDouble;
import org.hipparchus.distribution.continuous.NormalDistribution;

/**
 * The maximum of a likelihood. Parameters in this order: intercept b0 (log η of a Weibull, median
 * of log life of a lognormal), slope b1 where there is a covariate, log scale.
 *
 * @param coefficients b0, and b1 if any
 * @param logScale log of the scale of log life; −log β of a Weibull
 * @param covariance of the parameters, by the inverse of the observed information; the row of a
 *     scale that was held fixed is 0
 */
public record Maximum(
    Family family,
    List<Double> coefficients,
    double logScale,
    double logLikelihood,
    List<List<Double>> covariance)
    implements Fit {

  public Maximum {
    coefficients = List.copyOf(coefficients);
    covariance = covariance.stream().map(List::copyOf).toList();
  }

  public double intercept() {
    return coefficients.get(0);
  }

  /** The effect of the covariate; 0 where there is none. */
  public double slope() {
    return coefficients.size() > 1 ? coefficients.get(1) : 0;
  }

  public double scale() {
    return Math.exp(logScale);
  }

  /** β of a Weibull. */
  public double shape() {
    return Math.exp(-logScale);
  }

  /** exp(b0): η of a Weibull, the median of a lognormal, hours, at covariate 0. */
  public double lifeHours() {
    return Math.exp(intercept());
  }

  /** Halving interval in kelvin where the covariate is T − Tref; empty when life does not fall. */
  public OptionalDouble halvingKelvin() {
    return slope() < 0 ? OptionalDouble.of(-Math.log(2) / slope()) : OptionalDouble.empty();
  }

  /** Standard error of {@link #halvingKelvin()}, to first order. */
  public OptionalDouble halvingStandardError() {
    OptionalDouble halving = halvingKelvin();
    return halving.isEmpty()
        ? halving
        : OptionalDouble.of(halving.getAsDouble() * standardError(1) / -slope());
  }

  /** Standard error of a parameter. */
  public double standardError(int parameter) {
    return Math.sqrt(covariance.get(parameter).get(parameter));
  }

  /** The parameter itself. */
  public double parameter(int parameter) {
    return parameter < coefficients.size() ? coefficients.get(parameter) : logScale;
  }

  /** The interval that the standard error gives, at a confidence of 0 to 1. */
  public Range wald(int parameter, double confidence) {
    double z = new NormalDistribution().inverseCumulativeProbability((1 + confidence) / 2);
    double middle = parameter(parameter);
    return new Range(middle - z * standardError(parameter), middle + z * standardError(parameter));
  }
}
