package meltkeeper.jam;

/**
 * A CUSUM of log-likelihood ratios of a jam against health (Page 1954), weighed by how far such
 * ratios can be trusted on this printer. For true ratios the sum passes a limit at most once in
 * exp(limit) windows of health (Lorden 1971, from memory). Mutable.
 */
final class LikelihoodSum {

  private static final double CLIP = 4;
  private static final double MOST = 1.5;

  private double sum;
  private final Trust trust = new Trust();

  void take(double ratio, double limit) {
    double step = clipped(ratio);
    sum = Math.min(most(limit, trust), Math.max(0, sum + step));
    trust.take(step, sum <= 0);
  }

  /** No window says more than this, either way. */
  static double clipped(double ratio) {
    return Math.max(-CLIP, Math.min(CLIP, ratio));
  }

  /** Where a sum stays, so that it comes down again; 0 where nothing can be trusted. */
  static double most(double limit, Trust trust) {
    return trust.share() > 0 ? MOST * limit / trust.share() : 0;
  }

  /** The sum as a share of its limit, as far as it can be trusted. */
  double evidence(double limit) {
    return trust.share() * sum / limit;
  }

  /** What speaks for health in a healthy window, on average of late. */
  double healthPerWindow() {
    return trust.healthPerWindow();
  }

  void rearm() {
    sum = 0;
    trust.rearm();
  }

  void keep(Memory memory) {
    sum = memory.number("sum", sum);
    trust.keep(memory);
  }
}
