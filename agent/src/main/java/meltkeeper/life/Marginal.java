package meltkeeper.life;

import java.util.List;
import org.hipparchus.analysis.interpolation.SplineInterpolator;
import org.hipparchus.analysis.polynomials.PolynomialSplineFunction;

/**
 * A distribution of one number, known by its log density on some nodes: a cubic spline through the
 * logs (exact for a normal distribution), integrated. Nothing lies outside the nodes.
 */
final class Marginal {

  private static final int CUTS = 4;

  /** A log density so far below the peak is no density. */
  private static final double NOTHING = 200;

  private final double[] points;
  private final double[] density;
  private final double[] cumulative;

  /** The log density, of any scale; at least three nodes in rising order. */
  Marginal(double[] nodes, double[] logDensity) {
    double largest = Double.NEGATIVE_INFINITY;
    for (double log : logDensity) {
      largest = Math.max(largest, log);
    }
    double[] logs = new double[logDensity.length];
    for (int i = 0; i < logs.length; i++) {
      logs[i] = Math.max(logDensity[i], largest - NOTHING);
    }
    PolynomialSplineFunction spline = new SplineInterpolator().interpolate(nodes, logs);
    int cells = (nodes.length - 1) * CUTS;
    points = new double[cells + 1];
    density = new double[cells + 1];
    cumulative = new double[cells + 1];
    for (int i = 0; i <= cells; i++) {
      int node = Math.min(i / CUTS, nodes.length - 2);
      double share = (i - node * CUTS) / (double) CUTS;
      points[i] = nodes[node] + share * (nodes[node + 1] - nodes[node]);
      density[i] = Math.exp(spline.value(points[i]) - largest);
      if (i > 0) {
        double middle = Math.exp(spline.value((points[i - 1] + points[i]) / 2) - largest);
        cumulative[i] =
            cumulative[i - 1]
                + (points[i] - points[i - 1]) / 6 * (density[i - 1] + 4 * middle + density[i]);
      }
    }
    double all = cumulative[cells];
    for (int i = 0; i <= cells; i++) {
      density[i] /= all;
      cumulative[i] /= all;
    }
  }

  double low() {
    return points[0];
  }

  double high() {
    return points[points.length - 1];
  }

  /** P(it is below x). */
  double below(double x) {
    if (!(x > low())) {
      return 0;
    }
    if (!(x < high())) {
      return 1;
    }
    int i = cell(x);
    double width = points[i + 1] - points[i];
    double s = (x - points[i]) / width;
    double rise = cumulative[i + 1] - cumulative[i];
    double first = density[i] * width;
    double last = density[i + 1] * width;
    return cumulative[i]
        + s * (first + s * (3 * rise - 2 * first - last + s * (first + last - 2 * rise)));
  }

  private int cell(double x) {
    int found = java.util.Arrays.binarySearch(points, x);
    return Math.min(found >= 0 ? found : -found - 2, points.length - 2);
  }

  /** The value below which a share of 0 to 1 of a mixture lies. */
  static double quantile(List<Marginal> parts, List<Double> weights, double share) {
    double low = parts.stream().mapToDouble(Marginal::low).min().orElseThrow();
    double high = parts.stream().mapToDouble(Marginal::high).max().orElseThrow();
    while (high - low > 1e-10 * Math.max(Math.abs(low), Math.abs(high)) + 1e-300) {
      double middle = (low + high) / 2;
      double below = 0;
      for (int i = 0; i < parts.size(); i++) {
        below += weights.get(i) * parts.get(i).below(middle);
      }
      if (below < share) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return (low + high) / 2;
  }
}
