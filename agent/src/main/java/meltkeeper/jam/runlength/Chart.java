package meltkeeper.jam.runlength;

import org.hipparchus.analysis.integration.gauss.GaussIntegrator;
import org.hipparchus.analysis.integration.gauss.GaussIntegratorFactory;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.LUDecomposition;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;

/**
 * A one-sided CUSUM (Page 1954): {@code S = max(0, S + x - k)}, alarm when {@code S > h}, where x
 * is normal with unit variance and the shift as its mean. Run lengths count the alarm's sample.
 *
 * @param allowance k, in standard deviations, 0 or more
 * @param limit h, in standard deviations, above 0
 */
public record Chart(double allowance, double limit) {

  private static final int NODES = 120;

  /** From here on the arm against the shift runs longer than double precision can tell. */
  private static final double SURELY_SILENT = 18;

  public Chart {
    if (!(allowance >= 0) || !(limit > 0) || Double.isInfinite(limit)) {
      throw new IllegalArgumentException(
          "a CUSUM needs an allowance of 0 or more and a limit above 0, not "
              + allowance
              + " and "
              + limit);
    }
  }

  /** Mean run length from zero. */
  public double averageRunLength(double shift) {
    return averageRunLength(shift, 0);
  }

  /**
   * Mean run length from a head start, 0 to h, by the integral equation {@code L(s) = 1 +
   * Phi(k-m-s) L(0) + INT_0^h L(y) phi(y-s+k-m) dy} on Gauss-Legendre nodes.
   */
  public double averageRunLength(double shift, double start) {
    if (!(start >= 0 && start <= limit)) {
      throw new IllegalArgumentException(
          "a head start is from 0 to the limit " + limit + ", not " + start);
    }
    Nodes nodes = Nodes.on(limit);
    double drift = allowance - shift;
    int size = nodes.size() + 1;
    RealMatrix left = new Array2DRowRealMatrix(size, size);
    for (int row = 0; row < size; row++) {
      double from = row == 0 ? 0 : nodes.at(row - 1);
      left.setEntry(row, 0, (row == 0 ? 1 : 0) - Normal.below(drift - from));
      for (int j = 0; j + 1 < size; j++) {
        double move = nodes.weight(j) * Normal.density(nodes.at(j) - from + drift);
        left.setEntry(row, j + 1, (row == j + 1 ? 1 : 0) - move);
      }
    }
    RealVector lengths =
        new LUDecomposition(left).getSolver().solve(new ArrayRealVector(size, 1.0));
    double length = 1 + Normal.below(drift - start) * lengths.getEntry(0);
    for (int j = 0; j + 1 < size; j++) {
      length +=
          nodes.weight(j) * Normal.density(nodes.at(j) - start + drift) * lengths.getEntry(j + 1);
    }
    return length;
  }

  /**
   * Mean run length from zero by a Markov chain (Brook and Evans 1972), an independent way to the
   * same; its error falls with the square of the number of states, which is 2 or more.
   */
  public double averageRunLengthByChain(double shift, int states) {
    double width = 2 * limit / (2 * states - 1);
    double drift = allowance - shift;
    RealMatrix left = new Array2DRowRealMatrix(states, states);
    for (int i = 0; i < states; i++) {
      for (int j = 0; j < states; j++) {
        double upper = Normal.below((j - i) * width + width / 2 + drift);
        double lower = j == 0 ? 0 : Normal.below((j - i) * width - width / 2 + drift);
        left.setEntry(i, j, (i == j ? 1 : 0) - (upper - lower));
      }
    }
    return new LUDecomposition(left)
        .getSolver()
        .solve(new ArrayRealVector(states, 1.0))
        .getEntry(0);
  }

  /**
   * Mean run length of this chart and its mirror image together, both from the same head start
   * (Lucas and Crosier 1982): {@code (U'D + UD' - UD) / (U + D)}.
   */
  public double twoSidedRunLength(double shift, double start) {
    if (2 * (allowance + Math.abs(shift)) * limit > SURELY_SILENT) {
      return averageRunLength(Math.abs(shift), start);
    }
    double up = averageRunLength(shift);
    double down = averageRunLength(-shift);
    double upAhead = averageRunLength(shift, start);
    double downAhead = averageRunLength(-shift, start);
    return (upAhead * down + up * downAhead - up * down) / (up + down);
  }

  /** Gauss-Legendre nodes on 0 to the limit. */
  record Nodes(GaussIntegrator rule) {

    static Nodes on(double limit) {
      return new Nodes(new GaussIntegratorFactory().legendre(NODES, 0, limit));
    }

    int size() {
      return rule.getNumberOfPoints();
    }

    double at(int index) {
      return rule.getPoint(index);
    }

    double weight(int index) {
      return rule.getWeight(index);
    }
  }
}
