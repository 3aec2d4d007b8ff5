package meltkeeper.life;

import java.util.ArrayList;
import java.util.List;
import org.hipparchus.special.Gamma;

/**
 * The life of the next part: Weibull lives with weights. Its hazard may fall at high age though
 * that of each of its members rises: those still alive are the sturdier ones.
 */
final class Mixture {

  private static final double NEGLIGIBLE = 1e-9;

  private final double[] logLife;
  private final double[] shape;
  private final double[] weight;

  private Mixture(List<double[]> members) {
    double sum = members.stream().mapToDouble(m -> m[2]).sum();
    logLife = members.stream().mapToDouble(m -> m[0]).toArray();
    shape = members.stream().mapToDouble(m -> m[1]).toArray();
    weight = members.stream().mapToDouble(m -> m[2] / sum).toArray();
  }

  static Mixture of(Weibull life) {
    return new Mixture(List.of(new double[] {life.logLife(), life.shape(), 1}));
  }

  static Mixture of(Posterior posterior) {
    List<double[]> members = new ArrayList<>();
    for (int r = 0; r < posterior.rows().size(); r++) {
      Row row = posterior.rows().get(r);
      for (int k = 0; k < row.size(); k++) {
        double weight = posterior.weight(r) * row.share(k);
        if (weight > NEGLIGIBLE) {
          members.add(new double[] {row.logLife(k), row.shape(), weight});
        }
      }
    }
    return new Mixture(members);
  }

  double survival(double hours) {
    double log = Math.log(hours);
    double sum = 0;
    for (int i = 0; i < weight.length; i++) {
      sum += weight[i] * Math.exp(-Math.exp(shape[i] * (log - logLife[i])));
    }
    return sum;
  }

  double density(double hours) {
    double log = Math.log(hours);
    double sum = 0;
    for (int i = 0; i < weight.length; i++) {
      double hazard = Math.exp(shape[i] * (log - logLife[i]));
      sum += weight[i] * shape[i] * hazard * Math.exp(-hazard);
    }
    return sum / hours;
  }

  double meanHours() {
    double sum = 0;
    for (int i = 0; i < weight.length; i++) {
      sum += weight[i] * Math.exp(logLife[i] + Gamma.logGamma(1 + 1 / shape[i]));
    }
    return sum;
  }

  /** About the middle of it, hours. */
  double middleHours() {
    double sum = 0;
    for (int i = 0; i < weight.length; i++) {
      sum += weight[i] * logLife[i];
    }
    return Math.exp(sum);
  }
}
