package meltkeeper.jam;

/**
 * How a duty strays from window to window: a part that does not stay, of counting and sampling, and
 * a part that does, of moving air. Learned from the errors of healthy predictions: their size
 * scales both, their correlation shifts between the two. Mutable.
 */
final class DutyNoise {

  private static final double PRIOR = 0.012;
  private static final double LEAST = 0.003;
  private static final double CLIP = 2.5;
  private static final double MOST_PRODUCT = 2;
  private static final double TILT = 3;
  private static final double FLEETING_TILT = 0.3;

  private double variance = PRIOR * PRIOR;
  private double wander = 0.1 * PRIOR * PRIOR;
  private double last = Double.NaN;

  /** Variance of the part that does not stay. */
  double variance() {
    return variance;
  }

  /** Variance by which the level wanders in a window. */
  double wander() {
    return wander;
  }

  /**
   * Takes the error of a healthy window's prediction in standard deviations.
   *
   * @param windows how many were learned from
   */
  void learn(double error, int windows) {
    double share = 1.0 / Math.min(300, 10 + windows);
    double held = Math.max(-CLIP, Math.min(CLIP, error));
    double scale = 1 + share * (held * held - 1);
    variance *= scale;
    wander *= scale;
    if (!Double.isNaN(last)) {
      double product = Math.max(-MOST_PRODUCT, Math.min(MOST_PRODUCT, held * last));
      wander *= Math.exp(TILT * share * product);
      wander = Math.max(1e-3 * variance, Math.min(10 * variance, wander));
      variance /= Math.exp(FLEETING_TILT * TILT * share * product);
    }
    variance = Math.max(LEAST * LEAST, variance);
    last = held;
  }

  void rearm() {
    last = Double.NaN;
  }

  void keep(Memory memory) {
    variance = memory.number("variance", variance);
    wander = memory.number("wander", wander);
    last = memory.number("last", last);
  }
}
