package meltkeeper.life;

import java.util.List;

/**
 * Log-likelihood of a table of lives in the parameters θ = (α, γ0, γ1), z = α·log t − γ0 − γ1·x: α
 * = 1/scale, γ = α·b. In these it is concave, for exact, right-censored and interval-censored lives
 * alike (Burridge 1981; Pratt 1981; from memory), so Newton's method cannot go astray.
 */
final class ConcaveLikelihood {

  static final int PARAMETERS = 3;

  private final Family family;
  private final List<Observation> observations;

  ConcaveLikelihood(Family family, List<Observation> observations) {
    this.family = family;
    this.observations = observations;
  }

  /** Value, gradient and Hessian at one θ. */
  static final class Jet {
    double value;
    final double[] gradient = new double[PARAMETERS];
    final double[][] hessian = new double[PARAMETERS][PARAMETERS];

    private void add(double count, double slope, double curvature, double[] direction) {
      for (int i = 0; i < PARAMETERS; i++) {
        gradient[i] += count * slope * direction[i];
        for (int j = 0; j < PARAMETERS; j++) {
          hessian[i][j] += count * curvature * direction[i] * direction[j];
        }
      }
    }

    private void addCross(double factor, double[] one, double[] other) {
      for (int i = 0; i < PARAMETERS; i++) {
        for (int j = 0; j < PARAMETERS; j++) {
          hessian[i][j] += factor * (one[i] * other[j] + other[i] * one[j]);
        }
      }
    }
  }

  Jet at(double[] theta) {
    Jet jet = new Jet();
    for (Observation observation : observations) {
      if (observation instanceof Observation.Failed failed) {
        addFailed(jet, theta, failed);
      } else if (observation instanceof Observation.Between between) {
        addBetween(jet, theta, between);
      } else {
        addSurvived(jet, theta, (Observation.Survived) observation);
      }
    }
    return jet;
  }

  private void addFailed(Jet jet, double[] theta, Observation.Failed failed) {
    double logHours = Math.log(failed.hours());
    double[] direction = direction(logHours, failed.covariate());
    double z = dot(theta, direction);
    jet.value += failed.count() * (family.logDensity(z) + Math.log(theta[0]) - logHours);
    jet.add(failed.count(), family.slope(z), family.curvature(z), direction);
    jet.gradient[0] += failed.count() / theta[0];
    jet.hessian[0][0] -= failed.count() / (theta[0] * theta[0]);
  }

  private void addSurvived(Jet jet, double[] theta, Observation.Survived survived) {
    double[] direction = direction(Math.log(survived.hours()), survived.covariate());
    double z = dot(theta, direction);
    double logSurvival = family.logSurvival(z);
    double hazard = Math.exp(family.logDensity(z) - logSurvival);
    jet.value += survived.count() * logSurvival;
    jet.add(survived.count(), -hazard, -hazard * (family.slope(z) + hazard), direction);
  }

  private void addBetween(Jet jet, double[] theta, Observation.Between between) {
    double[] first = direction(Math.log(between.after()), between.covariate());
    double[] second = direction(Math.log(between.hours()), between.covariate());
    double z1 = dot(theta, first);
    double z2 = dot(theta, second);
    double logAlive1 = family.logSurvival(z1);
    double log = logAlive1 + Math.log(-Math.expm1(Math.min(0, family.logSurvival(z2) - logAlive1)));
    double density1 = Math.exp(family.logDensity(z1) - log);
    double density2 = Math.exp(family.logDensity(z2) - log);
    jet.value += between.count() * log;
    jet.add(between.count(), -density1, -density1 * (family.slope(z1) + density1), first);
    jet.add(between.count(), density2, density2 * (family.slope(z2) - density2), second);
    jet.addCross(between.count() * density1 * density2, first, second);
  }

  private static double[] direction(double logHours, double covariate) {
    return new double[] {logHours, -1, -covariate};
  }

  private static double dot(double[] a, double[] b) {
    return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
  }
}
