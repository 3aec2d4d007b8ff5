package meltkeeper.jam;

import meltkeeper.jam.runlength.FalseAlarms;

/** Windows of filament, one after another, and the CUSUM of what is missing in each. Mutable. */
final class Windows {

  /** Window to window, healthy; 0.01 to 0.03 beyond counting is common practice, no source. */
  private static final double USUAL_SPREAD = 0.03;

  private static final double LEAST_SPREAD = 0.03;

  /** A steady loss of this share is no jam. */
  private static final double TOLERATED_LOSS = 0.05;

  private final RatioBaseline baseline = new RatioBaseline();
  private final Cusum cusum = new Cusum(USUAL_SPREAD, LEAST_SPREAD, TOLERATED_LOSS);

  private double asked;
  private double seen;
  private double seconds;
  private double speedSum;

  boolean add(double moreAsked, double moreSeen, double moreSeconds, double speed) {
    asked += moreAsked;
    seen += moreSeen;
    seconds += moreSeconds;
    speedSum += speed * moreAsked;
    return true;
  }

  boolean isFull(double millimetres) {
    return asked >= millimetres;
  }

  double asked() {
    return asked;
  }

  private double speed() {
    return speedSum / asked;
  }

  /** The open window's share of what is usual. */
  double shareOfUsual() {
    return baseline.isKnown() ? seen / asked / baseline.ratio(speed()) : 1;
  }

  void close(double pulse, FalseAlarms wanted, boolean learns, boolean blind) {
    double ratio = seen / asked;
    if (baseline.isKnown()) {
      double usual = baseline.ratio(speed());
      double counting = countingVariance(pulse, asked);
      double known = (counting + baseline.uncertainty(speed())) / (usual * usual);
      cusum.take(1 - ratio / usual, seconds, known, wanted, learns);
    }
    if (learns && cusum.isCalm()) {
      baseline.learn(ratio, speed(), cusum.spread(), blind);
    }
    open();
  }

  /**
   * Variance of the share of a window for the counting of whole pulses: its error is the difference
   * of two that are uniform over a pulse. Both in mm.
   */
  static double countingVariance(double pulse, double asked) {
    return pulse * pulse / 6 / (asked * asked);
  }

  private void open() {
    asked = 0;
    seen = 0;
    seconds = 0;
    speedSum = 0;
  }

  void rearm() {
    open();
    cusum.rearm();
  }

  void unsettle() {
    baseline.unsettle();
    cusum.unsettle();
  }

  double evidence() {
    return cusum.evidence();
  }

  boolean isCalm() {
    return cusum.isCalm();
  }

  double spread() {
    return cusum.spread();
  }

  double millimetresSpread() {
    return cusum.spread() * Feed.LEAST_WINDOW;
  }

  RatioBaseline baseline() {
    return baseline;
  }

  void keep(Memory memory) {
    baseline.keep(memory.within("baseline"));
    cusum.keep(memory.within("cusum"));
    asked = memory.number("asked", asked);
    seen = memory.number("seen", seen);
    seconds = memory.number("seconds", seconds);
    speedSum = memory.number("speedSum", speedSum);
  }
}
