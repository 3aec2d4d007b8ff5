package meltkeeper.jam.sim;

/** Mean and spread of a printer's first windows, a quarter of an hour, by which later ones go. */
final class FirstWindows {

  private static final int ENOUGH = 90;
  private static final double LEAST_SPREAD = 0.01;

  private int count;
  private double mean;
  private double squares;

  boolean isKnown() {
    return count >= ENOUGH;
  }

  void take(double value) {
    count++;
    double off = value - mean;
    mean += off / count;
    squares += off * (value - mean);
  }

  /** How many spreads a value is above the mean. */
  double standardised(double value) {
    return (value - mean) / Math.max(LEAST_SPREAD, Math.sqrt(squares / (count - 1)));
  }
}
