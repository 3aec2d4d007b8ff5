package meltkeeper.jam.sim;

/** Plain ways to watch an encoder, each with a row of limits from wary to deaf. */
public enum Way {
  /** What is missing of the last minute's filament, beyond a fixed share. */
  THRESHOLD("plain threshold", 0.05, 0.05, 1, 19),
  /** A CUSUM with a mean and a spread that are the same for all printers. */
  CUSUM("plain CUSUM", 3, 0, 1.25, 33),
  /** One window that strays too far from the printer's first quarter of an hour. */
  SHEWHART("Shewhart", 3, 0, 1.25, 33),
  /** Such windows smoothed, in spreads of what is smoothed (Roberts 1959, from memory). */
  EWMA("EWMA", 3, 0, 1.25, 33),
  /** A CUSUM of such windows, their correlation left in. */
  TAUGHT_CUSUM("CUSUM, not prewhitened", 3, 0, 1.25, 33);

  private final String label;
  private final double wariest;
  private final double more;
  private final double times;
  private final int limits;

  Way(String label, double wariest, double more, double times, int limits) {
    this.label = label;
    this.wariest = wariest;
    this.more = more;
    this.times = times;
    this.limits = limits;
  }

  /** As the table shows it. */
  public String label() {
    return label;
  }

  /** How many limits are tried. */
  public int limits() {
    return limits;
  }

  /** The limit at that place. */
  public double limit(int place) {
    return wariest * Math.pow(times, place) + more * place;
  }
}
