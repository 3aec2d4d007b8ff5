package meltkeeper.jam.sim;

/**
 * Looks for the full stall: the end of the first minute of a fault in which at least 10 mm were
 * asked for and under a tenth of it passed. Mutable.
 */
final class StallClock {

  private static final double MINUTE = 60;
  private static final double LEAST_MM = 10;
  private static final double LITTLE = 0.1;

  private double start;
  private double asked;
  private double moved;
  private double stall = Double.POSITIVE_INFINITY;

  /** Takes a step that ends at that time, s, with lengths in mm. */
  void take(double now, double moreAsked, double moreMoved, boolean faulty) {
    asked += moreAsked;
    moved += moreMoved;
    if (now - start >= MINUTE) {
      if (faulty && asked >= LEAST_MM && moved < LITTLE * asked) {
        stall = Math.min(stall, now);
      }
      start = now;
      asked = 0;
      moved = 0;
    }
  }

  /** When it was, s; infinite for not yet. */
  double seconds() {
    return stall;
  }
}
