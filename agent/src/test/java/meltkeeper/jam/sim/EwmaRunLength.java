package meltkeeper.jam.sim;

import org.hipparchus.analysis.integration.gauss.GaussIntegrator;
import org.hipparchus.analysis.integration.gauss.GaussIntegratorFactory;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.LUDecomposition;
import org.hipparchus.linear.RealMatrix;

/** How long an EWMA runs, by which the plain one of the benchmark got its smoothing. */
final class EwmaRunLength {

  private static final int NODES = 160;

  private EwmaRunLength() {}

  /**
   * Mean samples to the alarm of {@code z = (1 - smooths) z' + smooths x} at {@code |z| > limit
   * sqrt(smooths / (2 - smooths))}, from zero, by the integral equation of Crowder 1987 (from
   * memory).
   */
  static double of(double smooths, double limit, double shift) {
    double edge = limit * Math.sqrt(smooths / (2 - smooths));
    GaussIntegrator rule = new GaussIntegratorFactory().legendre(NODES, -edge, edge);
    RealMatrix left = new Array2DRowRealMatrix(NODES, NODES);
    for (int i = 0; i < NODES; i++) {
      for (int j = 0; j < NODES; j++) {
        double move = move(rule.getPoint(i), rule.getPoint(j), smooths, shift);
        left.setEntry(i, j, (i == j ? 1 : 0) - rule.getWeight(j) * move);
      }
    }
    double[] lengths =
        new LUDecomposition(left).getSolver().solve(new ArrayRealVector(NODES, 1.0)).toArray();
    double length = 1;
    for (int j = 0; j < NODES; j++) {
      length += rule.getWeight(j) * move(0, rule.getPoint(j), smooths, shift) * lengths[j];
    }
    return length;
  }

  private static double move(double from, double to, double smooths, double shift) {
    double x = (to - (1 - smooths) * from) / smooths - shift;
    return Math.exp(-0.5 * x * x) / Math.sqrt(2 * Math.PI) / smooths;
  }
}
