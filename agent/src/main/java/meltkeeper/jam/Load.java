package meltkeeper.jam;

import meltkeeper.jam.runlength.FalseAlarms;

/**
 * The feed motor's load against what is usual at that speed, a power of it: a narrowing bore makes
 * it rise before anything slips. Windows of time while filament is fed. Mutable.
 */
final class Load {

  private static final double WINDOW_SECONDS = 20;
  private static final int ENOUGH = 20;
  private static final double USUAL_SPREAD = 0.1;
  private static final double LEAST_SPREAD = 0.07;

  /** A rise by less than this share is wear of another kind. */
  private static final double TOLERATED_RISE = 0.35;

  private static final double MOST_RISE = 0.3;

  private final LinearFit line = new LinearFit(new double[] {0, 0.5}, new double[] {100, 0.3});
  private final Cusum cusum = new Cusum(USUAL_SPREAD, LEAST_SPREAD, TOLERATED_RISE);
  private final double[] inputs = {1, 0};
  private int windows;
  private double seconds;
  private double loadSum;
  private double asked;
  private double share = 1;

  void take(double load, double more, double stepSeconds, FalseAlarms wanted, boolean learns) {
    if (!(more > 0)) {
      return;
    }
    seconds += stepSeconds;
    loadSum += load * stepSeconds;
    asked += more;
    if (seconds < WINDOW_SECONDS) {
      return;
    }
    close(wanted, learns);
    seconds = 0;
    loadSum = 0;
    asked = 0;
  }

  private void close(FalseAlarms wanted, boolean learns) {
    double mean = loadSum / seconds;
    if (!(mean > 0)) {
      return;
    }
    inputs[1] = Math.log(asked / seconds);
    double rise = Math.log(mean) - line.predict(inputs);
    if (windows >= ENOUGH) {
      share = Math.exp(rise);
      cusum.take(rise, seconds, line.uncertainty(inputs), wanted, learns);
    }
    if (learns && cusum.isCalm()) {
      double held = windows < ENOUGH ? rise : Math.max(-MOST_RISE, Math.min(MOST_RISE, rise));
      windows = Math.min(windows + 1, 1000);
      line.learn(inputs, held, cusum.spread() * cusum.spread());
      line.forget(1.002, 0, 0);
    }
  }

  double evidence() {
    return cusum.evidence();
  }

  /** The newest window's load as a share at that speed. */
  double share() {
    return share;
  }

  boolean isCalm() {
    return cusum.isCalm();
  }

  void rearm() {
    cusum.rearm();
    seconds = 0;
    loadSum = 0;
    asked = 0;
    share = 1;
  }

  void keep(Memory memory) {
    line.keep(memory.within("line"));
    cusum.keep(memory.within("cusum"));
    windows = (int) memory.count("windows", windows);
    seconds = memory.number("seconds", seconds);
    loadSum = memory.number("loadSum", loadSum);
    asked = memory.number("asked", asked);
    share = memory.number("share", share);
  }
}
