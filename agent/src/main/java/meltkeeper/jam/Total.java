package meltkeeper.jam;

/** A running total of filament, joined over restarts of the printer's count. Mutable. */
final class Total {

  /** A fall by more than this is a restart, not a retraction, mm. */
  private static final double RESTART = 50;

  /** A fall by more than this to near zero is one too, mm. */
  private static final double LONG_RETRACTION = 10;

  /** Drawn back so far, filament is no longer in place, mm. */
  private static final double UNLOADED = 20;

  private double raw = Double.NaN;
  private double net;
  private double mark;
  private double fed;
  private double path;
  private long readings;
  private long restarts;
  private double leastStep = Double.POSITIVE_INFINITY;

  void take(double millimetres) {
    readings++;
    double step = millimetres - raw;
    boolean restarted = step < -RESTART || (step < -LONG_RETRACTION && Math.abs(millimetres) < 1);
    if (restarted) {
      restarts++;
    } else if (!Double.isNaN(raw)) {
      net += step;
      rise();
      path += Math.abs(step);
      if (Math.abs(step) > 1e-6) {
        leastStep = Math.min(leastStep, Math.abs(step));
      }
    }
    raw = millimetres;
  }

  private void rise() {
    if (net > mark) {
      fed += net - mark;
      mark = net;
    } else if (net < mark - UNLOADED) {
      mark = net;
    }
  }

  boolean known() {
    return readings > 0;
  }

  /** Readings so far. */
  long readings() {
    return readings;
  }

  /** Restarts of the count so far. */
  long restarts() {
    return restarts;
  }

  /** Net of retractions, mm since the first reading. */
  double net() {
    return net;
  }

  /** What was fed: the rise of the highest total so far, mm since the first reading. */
  double fed() {
    return fed;
  }

  /** Movement both ways, mm since the first reading. */
  double path() {
    return path;
  }

  /** The smallest step ever seen, mm: what a pulse is worth, or less. */
  double leastStep() {
    return Double.isInfinite(leastStep) ? 0 : leastStep;
  }

  void keep(Memory memory) {
    raw = memory.number("raw", raw);
    net = memory.number("net", net);
    mark = memory.number("mark", mark);
    fed = memory.number("fed", fed);
    path = memory.number("path", path);
    readings = memory.count("readings", readings);
    restarts = memory.count("restarts", restarts);
    leastStep = memory.number("leastStep", leastStep);
  }
}
