package meltkeeper.jam;

/**
 * Whether a hot end stood hot without feeding not long ago: filament softens above the heat break
 * then, swells and sticks (common practice, no source). Mutable.
 */
final class HotIdle {

  private static final double NANOS = 1e9;

  /** So long must it have stood, s, and so soon after must trouble come, mm (our own choice). */
  private static final double LEAST_SECONDS = 300;

  private static final double SOON_MILLIMETRES = 1000;

  private double fed;
  private long fedNanos = Long.MIN_VALUE;
  private long coldNanos = Long.MIN_VALUE;
  private double fedWhenIdleEnded = Double.NEGATIVE_INFINITY;

  /** Takes how it stands at a time: the filament fed so far, mm, and whether it is hot. */
  void take(long now, double fedSoFar, boolean hot) {
    if (!hot) {
      coldNanos = now;
    }
    if (fedSoFar > fed) {
      boolean stoodLong = fedNanos != Long.MIN_VALUE && (now - fedNanos) / NANOS >= LEAST_SECONDS;
      if (stoodLong && coldNanos < fedNanos) {
        fedWhenIdleEnded = fed;
      }
      fed = fedSoFar;
      fedNanos = now;
    }
  }

  /** True while what comes may have come of it. */
  boolean wasLately() {
    return fed - fedWhenIdleEnded <= SOON_MILLIMETRES;
  }

  /** When filament was last fed; the least number for never. */
  long fedNanos() {
    return fedNanos;
  }

  void keep(Memory memory) {
    fed = memory.number("fed", fed);
    fedNanos = memory.count("fedAt", fedNanos);
    coldNanos = memory.count("coldAt", coldNanos);
    fedWhenIdleEnded = memory.number("idleEnded", fedWhenIdleEnded);
  }
}
