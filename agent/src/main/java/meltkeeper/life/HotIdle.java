package meltkeeper.life;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import meltkeeper.part.Belief;

/**
 * Whether hours in which a part was hot but fed nothing age it faster than feeding hours do. The
 * factor between the two is believed to be 1, its log normal with standard deviation 0.7.
 *
 * @param share of all hot hours that were idle, 0 to 1
 * @param factor by how much faster than feeding hours idle hours age
 * @param probabilityFaster that the factor is above 1; one half before the parts spoke
 * @param oddsForDifference how much likelier the data are with a factor of its own than with none;
 *     about 1 when they cannot tell
 */
public record HotIdle(
    double share, Estimate factor, double probabilityFaster, double oddsForDifference) {

  private static final double SPREAD = 0.7;
  private static final int EACH_SIDE = 5;
  private static final double STEP = 0.45;

  /** What the parts say; empty when there was no idle hour. */
  public static Optional<HotIdle> of(Belief belief, List<PartLife> parts) {
    double hot = hours(parts, false);
    double idle = hours(parts, true);
    if (!(idle > 0)) {
      return Optional.empty();
    }
    List<PartLife> sorted = Posterior.sorted(parts);
    double[] logFactors = new double[2 * EACH_SIDE + 1];
    double[] logs = new double[logFactors.length];
    double none = 0;
    for (int i = 0; i < logs.length; i++) {
      logFactors[i] = (i - EACH_SIDE) * STEP;
      double evidence =
          new Quadrature(belief, sorted, 0, Math.exp(logFactors[i])).integrate().logEvidence();
      logs[i] = evidence + Prior.normal(logFactors[i], 0, SPREAD);
      none = i == EACH_SIDE ? evidence : none;
    }
    Marginal logFactor = new Marginal(logFactors, logs);
    double all = LogSum.of(logs);
    double mean = 0;
    for (int i = 0; i < logs.length; i++) {
      mean += Math.exp(logs[i] - all + logFactors[i]);
    }
    return Optional.of(
        new HotIdle(
            idle / hot,
            new Estimate(
                mean,
                factorAt(logFactor, 0.05),
                factorAt(logFactor, 0.5),
                factorAt(logFactor, 0.95)),
            1 - logFactor.below(0),
            Math.exp(all + Math.log(STEP) - none)));
  }

  private static double factorAt(Marginal logFactor, double share) {
    return Math.exp(Marginal.quantile(List.of(logFactor), List.of(1.0), share));
  }

  private static double hours(List<PartLife> parts, boolean idle) {
    List<Double> hours = new ArrayList<>();
    for (PartLife part : parts) {
      for (Spell spell : part.spells()) {
        hours.add((idle ? spell.idle() : spell.hot()).hotHours());
      }
    }
    return hours.stream().mapToDouble(h -> h).sum();
  }
}
