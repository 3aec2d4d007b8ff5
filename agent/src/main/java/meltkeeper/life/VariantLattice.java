package meltkeeper.life;

import java.util.Arrays;
import java.util.List;

/**
 * Log lives of a kind and of its variants at one shape and one opinion of ageing, all on one evenly
 * spaced lattice fine enough for the sharpest of them; sums over it are integrals to near machine
 * precision.
 */
final class VariantLattice {

  private static final double REACH = 6.5;
  private static final double STEP = 0.6;
  private static final int MOST_NODES = 600;

  /** Beyond so many spreads two lives have nothing to do with each other. */
  private static final double BAND = 8;

  private final double[] logLife;
  private final double[][] posterior;
  private final double[] longer;
  private final double logMass;

  /**
   * Sums them up.
   *
   * @param sections one for each variant, and last that of the parts without one
   */
  VariantLattice(
      Prior prior, double believedSpread, double spread, List<LifeLikelihood.Section> sections) {
    int groups = sections.size() - 1;
    double wide = Math.hypot(believedSpread, spread);
    double low = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    double sharpest = spread;
    for (LifeLikelihood.Section section : sections) {
      RowPeak peak = RowPeak.of(prior.logLifeMean(), wide, section);
      low = Math.min(low, peak.logLife() - REACH * peak.spread());
      high = Math.max(high, peak.logLife() + REACH * peak.spread());
      sharpest = Math.min(sharpest, peak.spread() / Math.sqrt(sections.size()));
    }
    double step = Math.max(STEP * sharpest, (high - low) / MOST_NODES);
    int size = (int) Math.ceil((high - low) / step) + 1;
    logLife = new double[size];
    double[] kind = new double[size];
    double[][] likelihood = new double[groups][size];
    for (int i = 0; i < size; i++) {
      logLife[i] = low + i * step;
      kind[i] = prior.ofLogLife(logLife[i]) + sections.get(groups).logLikelihood(logLife[i]);
      for (int g = 0; g < groups; g++) {
        likelihood[g][i] = sections.get(g).logLikelihood(logLife[i]);
      }
    }
    double scale = scaled(kind);
    for (double[] one : likelihood) {
      scale += scaled(one);
    }
    double[] kernel = kernel(size, step, spread);
    double[][] pooled = new double[groups][];
    double[] joint = kind.clone();
    for (int g = 0; g < groups; g++) {
      pooled[g] = convolved(likelihood[g], kernel);
      for (int i = 0; i < size; i++) {
        joint[i] *= pooled[g][i];
      }
    }
    double mass = Arrays.stream(joint).sum();
    logMass = scale + Math.log(Math.max(mass, Double.MIN_NORMAL)) + Math.log(step);
    posterior = new double[groups][];
    longer = new double[groups];
    for (int g = 0; g < groups; g++) {
      double[] others = new double[size];
      for (int i = 0; i < size; i++) {
        others[i] = pooled[g][i] > 0 ? joint[i] / pooled[g][i] : 0;
      }
      posterior[g] = convolved(others, kernel);
      for (int i = 0; i < size; i++) {
        posterior[g][i] *= likelihood[g][i];
      }
      longer[g] = mass > 0 ? shareAbove(others, likelihood[g], kernel) / mass : 0.5;
    }
  }

  /** Turns logs into values of which the largest is 1; returns its log. */
  private static double scaled(double[] logs) {
    double largest = Arrays.stream(logs).max().orElseThrow();
    for (int i = 0; i < logs.length; i++) {
      logs[i] = Math.exp(logs[i] - largest);
    }
    return largest;
  }

  /** A normal density on the lattice by distance, summing to 1 over both sides. */
  private static double[] kernel(int size, double step, double spread) {
    double[] kernel = new double[(int) Math.min(size, Math.ceil(BAND * spread / step) + 1)];
    double sum = 0;
    for (int d = 0; d < kernel.length; d++) {
      double z = d * step / spread;
      kernel[d] = Math.exp(-z * z / 2);
      sum += d == 0 ? kernel[d] : 2 * kernel[d];
    }
    for (int d = 0; d < kernel.length; d++) {
      kernel[d] /= sum;
    }
    return kernel;
  }

  private static double[] convolved(double[] values, double[] kernel) {
    double[] sums = new double[values.length];
    for (int i = 0; i < sums.length; i++) {
      int first = Math.max(0, i - kernel.length + 1);
      int last = Math.min(sums.length - 1, i + kernel.length - 1);
      for (int j = first; j <= last; j++) {
        sums[i] += values[j] * kernel[Math.abs(i - j)];
      }
    }
    return sums;
  }

  private static double shareAbove(double[] others, double[] likelihood, double[] kernel) {
    double sum = 0;
    for (int i = 0; i < others.length; i++) {
      double above = likelihood[i] * kernel[0] / 2;
      for (int j = i + 1; j < Math.min(likelihood.length, i + kernel.length); j++) {
        above += likelihood[j] * kernel[j - i];
      }
      sum += others[i] * above;
    }
    return sum;
  }

  /** log of the integral over all lives. */
  double logMass() {
    return logMass;
  }

  /** P(the variant lasts longer than its kind). */
  double probabilityLonger(int group) {
    return longer[group];
  }

  /** The variant's own life. */
  Row row(int group, double logShape, Ageing ageing) {
    return Row.on(logLife, posterior[group], logShape, ageing);
  }
}
