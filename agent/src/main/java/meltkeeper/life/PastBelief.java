package meltkeeper.life;

import meltkeeper.part.PriorPast;
import org.hipparchus.analysis.integration.gauss.GaussIntegrator;
import org.hipparchus.analysis.integration.gauss.GaussIntegratorFactory;

/**
 * Nodes and weights for a past of uncertain length: a normal distribution cut at 0 (so that its
 * mean lies a little above the one that was stated).
 */
final class PastBelief {

  private static final int NODES = 24;
  private static final double REACH = 6;

  private static final PastBelief NONE = new PastBelief(new double[1], new double[] {1});

  private final double[] hours;
  private final double[] weights;

  private PastBelief(double[] hours, double[] weights) {
    this.hours = hours;
    this.weights = weights;
  }

  /** Of a part; a single node of 0 hours where it has no past. */
  static PastBelief of(PartLife part) {
    return part.past().map(PastBelief::of).orElse(NONE);
  }

  static PastBelief of(PriorPast past) {
    if (!(past.spreadHours() > 0)) {
      return new PastBelief(new double[] {past.hours()}, new double[] {1});
    }
    GaussIntegrator rule =
        new GaussIntegratorFactory()
            .legendre(
                NODES,
                Math.max(0, past.hours() - REACH * past.spreadHours()),
                past.hours() + REACH * past.spreadHours());
    double[] hours = new double[NODES];
    double[] weights = new double[NODES];
    double sum = 0;
    for (int k = 0; k < NODES; k++) {
      hours[k] = rule.getPoint(k);
      double z = (hours[k] - past.hours()) / past.spreadHours();
      weights[k] = rule.getWeight(k) * Math.exp(-z * z / 2);
      sum += weights[k];
    }
    for (int k = 0; k < NODES; k++) {
      weights[k] /= sum;
    }
    return new PastBelief(hours, weights);
  }

  int size() {
    return hours.length;
  }

  double hours(int k) {
    return hours[k];
  }

  double weight(int k) {
    return weights[k];
  }
}
