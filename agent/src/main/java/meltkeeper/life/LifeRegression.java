package meltkeeper.life;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.DoubleUnaryOperator;
import org.hipparchus.analysis.solvers.BracketingNthOrderBrentSolver;
import org.hipparchus.distribution.continuous.ChiSquaredDistribution;
import org.hipparchus.linear.RealMatrix;

/**
 * Maximum likelihood for log T = b0 + b1·x + scale·z, censored: the practitioner's check on the
 * posterior, and the way to reproduce published tables. Halving rule: x = T − Tref, b1 = −ln 2/H.
 * Arrhenius: x = {@link Thermal#arrheniusCovariate}, b1 = Ea.
 */
public final class LifeRegression {

  private final Family family;
  private final boolean hasCovariate;
  private final List<Observation> observations;
  private final ConcaveLikelihood likelihood;

  private LifeRegression(Family family, boolean hasCovariate, List<Observation> observations) {
    this.family = family;
    this.hasCovariate = hasCovariate;
    this.observations = List.copyOf(observations);
    this.likelihood = new ConcaveLikelihood(family, this.observations);
  }

  /** Of one population; covariates are ignored. */
  public static LifeRegression ofOneSample(Family family, List<Observation> observations) {
    return new LifeRegression(family, false, observations);
  }

  /** Of a population whose log life moves with the covariate. */
  public static LifeRegression onCovariate(Family family, List<Observation> observations) {
    return new LifeRegression(family, true, observations);
  }

  /** The maximum over all parameters. */
  public Fit fit() {
    return visibleFault().<Fit>map(Fit.NoMaximum::new).orElseGet(() -> fitOn(freePlane(), true));
  }

  /** The maximum with the scale of log life held fixed; 1 makes a Weibull exponential. */
  public Fit fitWithScale(double scale) {
    if (observations.stream().allMatch(o -> o instanceof Observation.Survived)) {
      return new Fit.NoMaximum(Fit.Reason.NO_FAILURE);
    }
    return fitOn(fixedScale(scale), false);
  }

  /**
   * The values of a parameter that a likelihood-ratio test would not reject (chi-square with one
   * degree of freedom), at a confidence of 0 to 1. An end that the data do not set is infinite.
   */
  public Range likelihoodRatio(Maximum maximum, int parameter, double confidence) {
    double cut =
        maximum.logLikelihood()
            - new ChiSquaredDistribution(1).inverseCumulativeProbability(confidence) / 2;
    double middle = maximum.parameter(parameter);
    double step = maximum.standardError(parameter);
    DoubleUnaryOperator above = value -> profile(maximum, parameter, value) - cut;
    return new Range(
        crossing(above, middle, -step).orElse(Double.NEGATIVE_INFINITY),
        crossing(above, middle, step).orElse(Double.POSITIVE_INFINITY));
  }

  private static OptionalDouble crossing(DoubleUnaryOperator above, double from, double step) {
    double inside = from;
    for (double reach = step; Math.abs(reach) < Math.abs(step) * 1e4; reach *= 1.5) {
      double outside = from + reach;
      if (above.applyAsDouble(outside) < 0) {
        return OptionalDouble.of(
            new BracketingNthOrderBrentSolver(1e-14, 1e-13, 1e-12, 5)
                .solve(
                    200,
                    above::applyAsDouble,
                    Math.min(inside, outside),
                    Math.max(inside, outside)));
      }
      inside = outside;
    }
    return OptionalDouble.empty();
  }

  private double profile(Maximum maximum, int parameter, double value) {
    int scaleParameter = maximum.coefficients().size();
    Plane plane =
        parameter == scaleParameter
            ? fixedScale(Math.exp(value))
            : parameter == 0 ? fixedIntercept(value) : fixedSlope(value);
    return ConcaveAscent.climb(likelihood, plane)
        .map(ConcaveAscent.Top::value)
        .orElse(Double.NEGATIVE_INFINITY);
  }

  private Optional<Fit.Reason> visibleFault() {
    List<Observation> failures =
        observations.stream().filter(o -> !(o instanceof Observation.Survived)).toList();
    if (failures.isEmpty()) {
      return Optional.of(Fit.Reason.NO_FAILURE);
    }
    if (hasCovariate
        && observations.stream().mapToDouble(Observation::covariate).distinct().count() < 2) {
      return Optional.of(Fit.Reason.NO_CONTRAST);
    }
    boolean exact = failures.stream().allMatch(o -> o instanceof Observation.Failed);
    double first = logHours(failures.get(0));
    boolean sameAge = failures.stream().allMatch(o -> logHours(o) == first);
    boolean noneLater = observations.stream().allMatch(o -> logHours(o) <= first);
    return exact && sameAge && noneLater && !hasCovariate
        ? Optional.of(Fit.Reason.NO_SCATTER)
        : Optional.empty();
  }

  private Fit fitOn(Plane plane, boolean scaleIsFree) {
    return ConcaveAscent.climb(likelihood, plane)
        .<Fit>map(top -> maximum(top, plane, scaleIsFree))
        .orElse(new Fit.NoMaximum(Fit.Reason.UNBOUNDED));
  }

  private Maximum maximum(ConcaveAscent.Top top, Plane plane, boolean scaleIsFree) {
    double alpha = top.theta().getEntry(0);
    List<Double> coefficients = new ArrayList<>();
    List<double[]> toTheta = new ArrayList<>();
    for (int i = 1; i <= (hasCovariate ? 2 : 1); i++) {
      double coefficient = top.theta().getEntry(i) / alpha;
      coefficients.add(coefficient);
      double[] row = new double[ConcaveLikelihood.PARAMETERS];
      row[0] = -coefficient / alpha;
      row[i] = 1 / alpha;
      toTheta.add(row);
    }
    toTheta.add(new double[] {scaleIsFree ? -1 / alpha : 0, 0, 0});
    List<List<Double>> covariance = new ArrayList<>();
    for (double[] one : toTheta) {
      List<Double> row = new ArrayList<>();
      for (double[] other : toTheta) {
        row.add(bilinear(plane.gradient(one), top.covariance(), plane.gradient(other)));
      }
      covariance.add(row);
    }
    return new Maximum(family, coefficients, -Math.log(alpha), top.value(), covariance);
  }

  private static double bilinear(double[] left, RealMatrix matrix, double[] right) {
    double sum = 0;
    for (int i = 0; i < left.length; i++) {
      for (int j = 0; j < right.length; j++) {
        sum += left[i] * matrix.getEntry(i, j) * right[j];
      }
    }
    return sum;
  }

  private Plane freePlane() {
    double middle = meanLogHours();
    double[] steepness = {1, middle, 0};
    return new Plane(
        new double[3], columns(steepness), start(1 / Math.max(spreadLogHours(), 1e-3)));
  }

  private Plane fixedScale(double scale) {
    double[][] all = columns(new double[3]);
    double[][] kept = hasCovariate ? new double[][] {all[1], all[2]} : new double[][] {all[1]};
    return new Plane(
        new double[] {1 / scale, meanLogHours() / scale, 0}, kept, new double[kept.length]);
  }

  private Plane fixedIntercept(double intercept) {
    double[] steepness = {1, intercept, 0};
    if (!hasCovariate) {
      return new Plane(
          new double[3], new double[][] {steepness}, new double[] {1 / startScale(intercept)});
    }
    double middle = meanCovariate();
    steepness[2] =
        Math.abs(middle) > 1e-3 * spreadCovariate() ? (meanLogHours() - intercept) / middle : 0;
    return new Plane(
        new double[3],
        new double[][] {steepness, {0, 0, 1}},
        new double[] {1 / Math.max(spreadLogHours(), 1e-3), 0});
  }

  private Plane fixedSlope(double slope) {
    double[] steepness = {1, meanLogHours() - slope * meanCovariate(), slope};
    return new Plane(
        new double[3],
        new double[][] {steepness, {0, 1, 0}},
        new double[] {1 / Math.max(spreadLogHours(), 1e-3), 0});
  }

  private double[][] columns(double[] steepness) {
    double[] level = {0, 1, 0};
    double[] tilt = {0, -meanCovariate() / spreadCovariate(), 1 / spreadCovariate()};
    return hasCovariate
        ? new double[][] {steepness, level, tilt}
        : new double[][] {steepness, level};
  }

  private double[] start(double alpha) {
    return hasCovariate ? new double[] {alpha, 0, 0} : new double[] {alpha, 0};
  }

  private double startScale(double intercept) {
    return Math.max(Math.hypot(spreadLogHours(), meanLogHours() - intercept), 1e-3);
  }

  private static double logHours(Observation observation) {
    if (observation instanceof Observation.Failed failed) {
      return Math.log(failed.hours());
    }
    return observation instanceof Observation.Survived survived
        ? Math.log(survived.hours())
        : Math.log(((Observation.Between) observation).hours());
  }

  private double meanLogHours() {
    return observations.stream().mapToDouble(LifeRegression::logHours).average().orElse(0);
  }

  private double spreadLogHours() {
    double mean = meanLogHours();
    return Math.sqrt(
        observations.stream()
            .mapToDouble(o -> (logHours(o) - mean) * (logHours(o) - mean))
            .average()
            .orElse(1));
  }

  private double meanCovariate() {
    return hasCovariate
        ? observations.stream().mapToDouble(Observation::covariate).average().orElse(0)
        : 0;
  }

  private double spreadCovariate() {
    double mean = meanCovariate();
    double spread =
        Math.sqrt(
            observations.stream()
                .mapToDouble(o -> (o.covariate() - mean) * (o.covariate() - mean))
                .average()
                .orElse(1));
    return hasCovariate && spread > 0 ? spread : 1;
  }
}
