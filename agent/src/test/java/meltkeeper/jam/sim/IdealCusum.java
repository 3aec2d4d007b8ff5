package meltkeeper.jam.sim;

/**
 * What no watch can have: a CUSUM that knows when a fault begins and how its windows spread.
 * Windows of 10 s, k = 0.5, h = 10.94247 for one false alarm in 1000 h, zero at the onset (our own
 * model). Mutable.
 */
public final class IdealCusum {

  private static final double LIMIT = 10.94247;
  private static final double SECONDS = 10;

  private double start = Double.NaN;
  private double asked;
  private double seen;
  private double firstAsked;
  private double firstSeen;
  private double healthyAsked;
  private double healthySeen;
  private double healthySquares;
  private int healthyWindows;
  private double sum;
  private double alarm = Double.POSITIVE_INFINITY;

  /** Takes running totals while printing. */
  void take(double seconds, double totalAsked, double totalSeen, boolean faulty) {
    if (Double.isNaN(start) || seconds - start > 3 * SECONDS) {
      open(seconds, totalAsked, totalSeen);
      return;
    }
    if (seconds - start < SECONDS) {
      return;
    }
    asked = totalAsked - firstAsked;
    seen = totalSeen - firstSeen;
    open(seconds, totalAsked, totalSeen);
    if (asked < 2) {
      return;
    }
    if (!faulty) {
      healthyAsked += asked;
      healthySeen += seen;
      double ratio = seen / asked - 1;
      healthySquares += ratio * ratio;
      healthyWindows++;
      return;
    }
    double mean = healthySeen / healthyAsked;
    double off = mean - 1;
    double spread = Math.sqrt(Math.max(1e-4, healthySquares / healthyWindows - off * off));
    sum = Math.max(0, sum + (mean - seen / asked) / spread - 0.5);
    if (sum > LIMIT) {
      alarm = Math.min(alarm, seconds);
    }
  }

  private void open(double seconds, double totalAsked, double totalSeen) {
    start = seconds;
    firstAsked = totalAsked;
    firstSeen = totalSeen;
  }

  /** When it alarmed; infinite for never. */
  public double alarmSeconds() {
    return alarm;
  }
}
