package meltkeeper.jam.runlength;

import java.util.function.IntToDoubleFunction;

/**
 * The run of a chart sample by sample: how likely it is to be still silent, and where its statistic
 * then stands. For means that move, quantiles, and delays after a long quiet time. Mutable.
 */
public final class Run {

  private static final double GONE = 1e-12;
  private static final int LONGEST = 1_000_000;

  private final Chart chart;
  private final Chart.Nodes nodes;
  private double atZero = 1;
  private double[] density;

  /** A run from zero. */
  public Run(Chart chart) {
    this.chart = chart;
    this.nodes = Chart.Nodes.on(chart.limit());
    this.density = new double[nodes.size()];
  }

  /** Takes one sample whose mean is the shift, and tells the chance that no alarm came yet. */
  public double sample(double shift) {
    double drift = chart.allowance() - shift;
    double zero = atZero * Normal.below(drift);
    double[] next = new double[density.length];
    for (int j = 0; j < density.length; j++) {
      double mass = nodes.weight(j) * density[j];
      zero += mass * Normal.below(drift - nodes.at(j));
      next[j] += atZero * Normal.density(nodes.at(j) + drift);
      for (int i = 0; i < density.length; i++) {
        next[i] += mass * Normal.density(nodes.at(i) - nodes.at(j) + drift);
      }
    }
    atZero = zero;
    density = next;
    return silent();
  }

  /** The chance that no alarm came yet. */
  public double silent() {
    double sum = atZero;
    for (int j = 0; j < density.length; j++) {
      sum += nodes.weight(j) * density[j];
    }
    return sum;
  }

  /** Supposes that no alarm came yet. */
  public void supposeSilent() {
    double sum = silent();
    atZero /= sum;
    for (int j = 0; j < density.length; j++) {
      density[j] /= sum;
    }
  }

  /** Mean number of further samples to the alarm, their means told from sample 1 on. */
  public double meanToAlarm(IntToDoubleFunction shiftAt) {
    double mean = 1;
    for (int n = 1; n < LONGEST; n++) {
      double silent = sample(shiftAt.applyAsDouble(n));
      mean += silent;
      if (silent < GONE) {
        return mean;
      }
    }
    throw new IllegalArgumentException("no alarm within " + LONGEST + " samples");
  }

  /** Fewest samples with that chance, above 0 and below 1, that an alarm came by then. */
  public static int quantile(Chart chart, double shift, double chance) {
    Run run = new Run(chart);
    for (int n = 1; n < LONGEST; n++) {
      if (1 - run.sample(shift) >= chance) {
        return n;
      }
    }
    throw new IllegalArgumentException("no alarm within " + LONGEST + " samples");
  }

  /** Mean delay of the alarm after a shift that follows a long quiet time without alarm. */
  public static double steadyDelay(Chart chart, double shift, int quietSamples) {
    Run run = new Run(chart);
    for (int n = 0; n < quietSamples; n++) {
      run.sample(0);
      run.supposeSilent();
    }
    return run.meanToAlarm(n -> shift);
  }
}
