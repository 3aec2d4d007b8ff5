package meltkeeper.jam.runlength;

/**
 * The wanted interval between false alarms, shared out among charts: each of n charts may alarm
 * once in n intervals, so that all of them together alarm once in one.
 *
 * @param everyHours of printing, above 0
 * @param charts that share it, 1 or more
 */
public record FalseAlarms(double everyHours, int charts) {

  private static final double SECONDS_PER_HOUR = 3600;
  private static final double CLOSE = 1e-9;

  public FalseAlarms {
    if (!(everyHours > 0) || Double.isInfinite(everyHours) || charts < 1) {
      throw new IllegalArgumentException(
          "false alarms need an interval above 0 h and at least 1 chart, not "
              + everyHours
              + " h and "
              + charts);
    }
  }

  /** Samples between false alarms of one chart that takes one sample in that many seconds. */
  public double samples(double periodSeconds) {
    return everyHours * charts * SECONDS_PER_HOUR / periodSeconds;
  }

  /** The limit of each chart, by the integral equation. */
  public double limit(double allowance, double periodSeconds) {
    double samples = samples(periodSeconds);
    double limit = Siegmund.limit(allowance, samples);
    for (double error = 1; Math.abs(error) > CLOSE; ) {
      error = Math.log(samples / new Chart(allowance, limit).averageRunLength(0));
      limit += error / (2 * allowance);
    }
    return limit;
  }
}
