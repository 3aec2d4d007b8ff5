package meltkeeper.life;

import java.util.List;
import java.util.function.DoubleUnaryOperator;
import org.hipparchus.analysis.solvers.BracketingNthOrderBrentSolver;

/** The distribution of a {@link Measure} over a posterior. */
final class Spread {

  private final Posterior posterior;
  private final Measure measure;
  private final double[][] rising;

  Spread(Posterior posterior, Measure measure) {
    this.posterior = posterior;
    this.measure = measure;
    List<Row> rows = posterior.rows();
    this.rising = new double[rows.size()][];
    for (int r = 0; r < rising.length; r++) {
      Row row = rows.get(r);
      DoubleUnaryOperator scale = measure.on(row);
      rising[r] = new double[row.size()];
      for (int k = 0; k < rising[r].length; k++) {
        rising[r][k] = scale.applyAsDouble(row.logLife(k));
      }
    }
  }

  double mean() {
    double sum = 0;
    for (int r = 0; r < rising.length; r++) {
      Row row = posterior.rows().get(r);
      double inner = 0;
      for (int k = 0; k < rising[r].length; k++) {
        inner += row.share(k) * measure.value(rising[r][k]);
      }
      sum += posterior.weight(r) * inner;
    }
    return sum;
  }

  Estimate estimate() {
    double low = measure.value(quantile(0.05));
    double high = measure.value(quantile(0.95));
    return new Estimate(
        mean(), Math.min(low, high), measure.value(quantile(0.5)), Math.max(low, high));
  }

  private double quantile(double share) {
    double low = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    for (double[] row : rising) {
      low = Math.min(low, row[0]);
      high = Math.max(high, row[row.length - 1]);
    }
    if (!(low < high)) {
      return low;
    }
    return new BracketingNthOrderBrentSolver(1e-9, 1e-9, 1e-12, 5)
        .solve(200, value -> below(value) - share, low, high);
  }

  private double below(double value) {
    double sum = 0;
    for (int r = 0; r < rising.length; r++) {
      sum += posterior.weight(r) * posterior.rows().get(r).below(rising[r], value);
    }
    return sum;
  }
}
