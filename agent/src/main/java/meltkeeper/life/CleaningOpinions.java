package meltkeeper.life;

import java.util.ArrayList;
import java.util.List;
import meltkeeper.part.Belief;

/**
 * What a cleaning undoes is believed, and learned where parts ran on after one. The log odds of
 * every believed share are moved by one common shift, normal about 0 with standard deviation 1: a
 * belief of 0.7 has 0.31 to 0.92 within 90 %. Beliefs of 0 and 1 are taken as sure.
 */
final class CleaningOpinions {

  private static final int EACH_SIDE = 5;
  private static final double STEP = 0.7;

  private CleaningOpinions() {}

  static boolean areTold(List<PartLife> parts) {
    return parts.stream().anyMatch(PartLife::tellsOfCleaning);
  }

  static Posterior posterior(Belief belief, List<PartLife> parts) {
    List<Component> components = new ArrayList<>();
    double[] logPriors = new double[2 * EACH_SIDE + 1];
    for (int i = -EACH_SIDE; i <= EACH_SIDE; i++) {
      double shift = i * STEP;
      components.add(new Quadrature(belief, parts, shift, 1).integrate());
      logPriors[i + EACH_SIDE] = Prior.normal(shift, 0, 1) + Math.log(STEP);
    }
    return new Posterior(belief, parts, components, logPriors);
  }

  /** The share that a cleaning undoes, believed to be so, in the light of what parts told. */
  static Estimate restores(Posterior posterior, double believed) {
    double[] shifts = new double[2 * EACH_SIDE + 1];
    double[] logs = new double[shifts.length];
    boolean told = posterior.components().size() == shifts.length;
    double sum = 0;
    double mean = 0;
    for (int i = 0; i < shifts.length; i++) {
      shifts[i] = (i - EACH_SIDE) * STEP;
      logs[i] = told ? Math.log(posterior.componentWeight(i)) : Prior.normal(shifts[i], 0, 1);
      sum += Math.exp(logs[i]);
      mean += Math.exp(logs[i]) * Ageing.restored(believed, shifts[i]);
    }
    Marginal shift = new Marginal(shifts, logs);
    return new Estimate(
        mean / sum,
        Ageing.restored(believed, quantile(shift, 0.05)),
        Ageing.restored(believed, quantile(shift, 0.5)),
        Ageing.restored(believed, quantile(shift, 0.95)));
  }

  private static double quantile(Marginal shift, double share) {
    return Marginal.quantile(List.of(shift), List.of(1.0), share);
  }
}
