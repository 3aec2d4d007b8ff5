package meltkeeper.life;

import java.util.ArrayList;
import java.util.List;

/**
 * A posterior at fixed opinions on cleaning and idling.
 *
 * @param logEvidence log of the probability density of the data
 * @param rows those that carry any weight
 * @param weights of the rows; they sum to 1
 */
record Component(
    double logEvidence, Marginal logShape, Marginal halving, List<Row> rows, List<Double> weights) {

  private static final double NEGLIGIBLE = 1e-10;

  static Component of(
      double logEvidence, Marginal logShape, Marginal halving, List<Row> all, double[] logWeights) {
    List<Row> rows = new ArrayList<>();
    List<Double> weights = new ArrayList<>();
    double kept = 0;
    for (int i = 0; i < logWeights.length; i++) {
      double weight = Math.exp(logWeights[i] - logEvidence);
      if (weight > NEGLIGIBLE) {
        rows.add(all.get(i));
        weights.add(weight);
        kept += weight;
      }
    }
    double sum = kept;
    return new Component(
        logEvidence, logShape, halving, rows, weights.stream().map(w -> w / sum).toList());
  }
}
