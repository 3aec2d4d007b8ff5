package meltkeeper.jam;

import meltkeeper.jam.runlength.FalseAlarms;
import meltkeeper.jam.runlength.Siegmund;

/**
 * A one-sided CUSUM at work on the deficits of windows: it standardises by the spread that it has
 * learned, takes out their learned autocorrelation, and adds up what exceeds the allowance.
 *
 * <p>{@code e = (z - r z') / sqrt(1 - r^2)}, {@code S = max(0, S + e - k)}. A sustained shift is
 * smaller in e than in z by {@code sqrt((1-r)/(1+r))}, and so is the allowance. While few windows
 * are known the mean is uncertain, and the allowance larger; then a jam that has begun already
 * would also pass for spread and correlation, so that these are learned slowly. A window counts for
 * at most a quarter of the limit: tails are heavier than normal, and a full stop has its own rule.
 * Mutable.
 */
final class Cusum {

  private static final double USUAL_ALLOWANCE = 0.5;
  private static final double CALM = 0.3;
  private static final double MOST = 1.5;
  private static final double PRIOR_WINDOWS = 24;
  private static final double UNSETTLED_WINDOWS = 8;
  private static final double MEMORY_WINDOWS = 400;
  private static final double MOST_CORRELATION = 0.9;
  private static final double CLIP = 3;

  /** Healthy windows stray further than a normal variable of their variance. */
  private static final double HEAVY_TAILS = 1.5;

  private static final int RECOVERED = 5;
  private static final double LEAST_WINDOWS = 4;

  private final double leastSpread;
  private final double leastAllowance;

  private double windows;
  private double variance;
  private double correlation;
  private double last = Double.NaN;
  private double sum;
  private double periodSeconds = 10;
  private double limit = 12;
  private int good;

  /** Spreads and allowance in the unit of the deficits. */
  Cusum(double priorSpread, double leastSpread, double leastAllowance) {
    this.leastSpread = leastSpread;
    this.leastAllowance = leastAllowance;
    this.variance = priorSpread * priorSpread;
  }

  /**
   * Takes the deficit of one window.
   *
   * @param knownVariance what of its variance is known beforehand, as that of counting
   * @param learns false while something else speaks of a jam
   */
  void take(
      double deficit, double seconds, double knownVariance, FalseAlarms wanted, boolean learns) {
    double least = leastSpread * leastSpread + knownVariance;
    double spread = Math.sqrt(Math.max(least, HEAVY_TAILS * variance + 0.5 * knownVariance));
    double z = deficit / spread;
    double most = MOST_CORRELATION * windows / (windows + PRIOR_WINDOWS);
    double r = Math.max(0, Math.min(most, correlation));
    double shrink = Math.sqrt((1 - r) / (1 + r));
    double before = Double.isNaN(last) ? 0 : Math.max(-CLIP, Math.min(CLIP, last));
    double fresh = Double.isNaN(last) ? z : (z - r * before) / Math.sqrt(1 - r * r);
    double allowance =
        shrink * Math.max(USUAL_ALLOWANCE, leastAllowance / spread) + 1.5 / Math.sqrt(windows + 1);
    periodSeconds += (seconds - periodSeconds) / Math.min(windows + 1, 50);
    limit = Siegmund.limit(allowance, Math.max(2, wanted.samples(periodSeconds)));
    double step = Math.min(fresh - allowance, limit / LEAST_WINDOWS);
    sum = Math.min(MOST * limit, Math.max(0, sum + step));
    good = z < 1 ? good + 1 : 0;
    if (good >= RECOVERED && sum > CALM * limit) {
      sum = 0;
    }
    if (learns && sum < CALM * limit) {
      learn(z, spread);
    }
    last = z;
  }

  private void learn(double z, double spread) {
    double clipped = Math.max(-CLIP, Math.min(CLIP, z));
    windows = Math.min(windows + 1, MEMORY_WINDOWS);
    double share = 1 / (windows + PRIOR_WINDOWS);
    double square = clipped * spread * clipped * spread;
    variance += share * (square - variance);
    if (!Double.isNaN(last)) {
      double product = clipped * Math.max(-CLIP, Math.min(CLIP, last));
      correlation += share * (product - correlation);
    }
  }

  double evidence() {
    return limit > 0 ? sum / limit : 0;
  }

  boolean isCalm() {
    return sum < CALM * limit;
  }

  /** Begins anew with what it has learned. */
  void rearm() {
    sum = 0;
    last = Double.NaN;
    good = 0;
  }

  /** Grows less sure of its mean, as when the material changes. */
  void unsettle() {
    windows = Math.min(windows, UNSETTLED_WINDOWS);
  }

  double spread() {
    return Math.sqrt(Math.max(leastSpread * leastSpread, variance));
  }

  void keep(Memory memory) {
    windows = memory.number("windows", windows);
    variance = memory.number("variance", variance);
    correlation = memory.number("correlation", correlation);
    last = memory.number("last", last);
    sum = memory.number("sum", sum);
    periodSeconds = memory.number("period", periodSeconds);
    limit = memory.number("limit", limit);
    good = (int) memory.count("good", good);
  }
}
