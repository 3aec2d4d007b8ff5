package meltkeeper.life;

import java.util.Arrays;
import java.util.function.DoubleUnaryOperator;

/**
 * The posterior of log life at one shape and one opinion of ageing: equally spaced nodes around its
 * peak, which the trapezoidal rule integrates to near machine precision, as the density is smooth
 * and falls off on both sides.
 */
final class Row {

  /** Spacing of the nodes in standard deviations of the row. */
  private static final double STEP = 0.6;

  private static final int MOST_STEPS = 400;

  private final double logShape;
  private final Ageing ageing;
  private final double[] logLife;
  private final double[] share;
  private final Marginal marginal;
  private final double logMass;

  private Row(double logShape, Ageing ageing, double[] logLife, double[] logDensity) {
    this.logShape = logShape;
    this.ageing = ageing;
    this.logLife = logLife;
    double logSum = LogSum.of(logDensity);
    this.share = new double[logLife.length];
    for (int k = 0; k < share.length; k++) {
      share[k] = Math.exp(logDensity[k] - logSum);
    }
    this.marginal = new Marginal(logLife, logDensity);
    this.logMass = logSum + Math.log(logLife[1] - logLife[0]);
  }

  /** The row of a log density that has its peak about there. */
  static Row around(double logShape, Ageing ageing, RowPeak peak, DoubleUnaryOperator logDensity) {
    double step = STEP * peak.spread();
    double[] up = new double[MOST_STEPS];
    double[] down = new double[MOST_STEPS];
    up[0] = logDensity.applyAsDouble(peak.logLife());
    down[0] = up[0];
    double best = up[0];
    int ups = 1;
    int downs = 1;
    boolean growing = true;
    while (growing) {
      growing = false;
      if (ups < MOST_STEPS && (ups < 3 || up[ups - 1] > best - Box.DEPTH)) {
        up[ups] = logDensity.applyAsDouble(peak.logLife() + ups * step);
        best = Math.max(best, up[ups++]);
        growing = true;
      }
      if (downs < MOST_STEPS && (downs < 3 || down[downs - 1] > best - Box.DEPTH)) {
        down[downs] = logDensity.applyAsDouble(peak.logLife() - downs * step);
        best = Math.max(best, down[downs++]);
        growing = true;
      }
    }
    int size = ups + downs - 1;
    double[] logLife = new double[size];
    double[] density = new double[size];
    for (int k = 0; k < size; k++) {
      int offset = k - (downs - 1);
      logLife[k] = peak.logLife() + offset * step;
      density[k] = Math.max(offset >= 0 ? up[offset] : down[-offset], best - 60);
    }
    return new Row(logShape, ageing, logLife, density);
  }

  /**
   * The row of a density, of any scale, on evenly spaced nodes; what carries nothing is cut off.
   */
  static Row on(double[] logLife, double[] density, double logShape, Ageing ageing) {
    double[] logs = new double[density.length];
    double largest = Double.NEGATIVE_INFINITY;
    for (int k = 0; k < logs.length; k++) {
      logs[k] = Math.log(Math.max(density[k], Double.MIN_NORMAL));
      largest = Math.max(largest, logs[k]);
    }
    int first = 0;
    int last = logs.length - 1;
    while (last - first > 2 && logs[first] < largest - Box.DEPTH) {
      first++;
    }
    while (last - first > 2 && logs[last] < largest - Box.DEPTH) {
      last--;
    }
    return new Row(
        logShape,
        ageing,
        Arrays.copyOfRange(logLife, first, last + 1),
        Arrays.copyOfRange(logs, first, last + 1));
  }

  /** log of the integral of the density that it was made of. */
  double logMass() {
    return logMass;
  }

  double logShape() {
    return logShape;
  }

  double shape() {
    return Math.exp(logShape);
  }

  Ageing ageing() {
    return ageing;
  }

  int size() {
    return logLife.length;
  }

  double logLife(int k) {
    return logLife[k];
  }

  /** Probability of a node; they sum to 1. */
  double share(int k) {
    return share[k];
  }

  /** P(log life is below that). */
  double below(double value) {
    return marginal.below(value);
  }

  /** P(a quantity that rises with log life, given at the nodes, is below a value). */
  double below(double[] rising, double value) {
    int last = rising.length - 1;
    int found = Arrays.binarySearch(rising, value);
    int i = Math.max(0, Math.min(found >= 0 ? found : -found - 2, last - 1));
    double rise = rising[i + 1] - rising[i];
    double s = rise > 0 ? (value - rising[i]) / rise : 0.5;
    return below(logLife[i] + s * (logLife[i + 1] - logLife[i]));
  }
}
