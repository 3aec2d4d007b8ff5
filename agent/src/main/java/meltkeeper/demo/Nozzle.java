package meltkeeper.demo;

/**
 * A bore that power-law melt is pressed through by a gear with a limited grip.
 *
 * <p>Pressure goes with {@code Q^n r^-(3n+1)}. While it needs less than the grip, all that is asked
 * for is fed; above, the gear slips, and what is fed is {@code [(r/r0)^(3n+1) / phi]^(1/n)} of it,
 * phi being the clean force at that speed over the grip (a model, from common practice).
 */
final class Nozzle {

  /** Power-law index of the melt. */
  static final double INDEX = 0.5;

  /** What the gear can push, N; 40 to 100 is common practice, no source. */
  static final double GRIP_NEWTON = 60;

  /** Clean force over grip at {@link #USUAL_SPEED}. */
  static final double CLEAN_LOAD = 0.3;

  /** mm/s of filament. */
  static final double USUAL_SPEED = 5;

  private Nozzle() {}

  /** Force over grip at a speed, above 0, and an openness r/r0 from 0 to 1; at most 1. */
  static double load(double millimetresPerSecond, double openness) {
    return openness > 0
        ? Math.min(1, cleanLoad(millimetresPerSecond) / StrictMath.pow(openness, 3 * INDEX + 1))
        : 1;
  }

  /** The share, 0 to 1, of what is asked for that is fed. */
  static double fed(double millimetresPerSecond, double openness) {
    if (!(openness > 0)) {
      return 0;
    }
    return fedOf(cleanLoad(millimetresPerSecond), INDEX, openness);
  }

  static double fedOf(double cleanLoad, double index, double openness) {
    double room = StrictMath.pow(openness, 3 * index + 1) / cleanLoad;
    return room >= 1 ? 1 : StrictMath.pow(room, 1 / index);
  }

  private static double cleanLoad(double millimetresPerSecond) {
    return CLEAN_LOAD * StrictMath.pow(millimetresPerSecond / USUAL_SPEED, INDEX);
  }
}
