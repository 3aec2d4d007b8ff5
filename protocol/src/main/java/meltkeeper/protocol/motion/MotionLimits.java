package meltkeeper.protocol.motion;

/**
 * What a printer can do. The defaults are those of a plain desktop printer (common practice, no
 * source).
 *
 * @param acceleration of moves that lay filament, mm/s²
 * @param travelAcceleration of moves that lay none, mm/s²
 * @param filamentAcceleration of moves of the filament alone, mm/s²
 * @param junctionDeviation how far a corner may be cut in thought to find its speed, mm; 0 is a
 *     full stop at every corner
 * @param plateSpeed fastest in X and in Y, mm/s
 * @param heightSpeed fastest in Z, mm/s
 * @param filamentSpeed fastest feed or retraction, mm/s of filament
 * @param heating of a hot end, K/s
 * @param cooling of a hot end, K/s
 * @param plateHeating of the plate, K/s
 * @param homingSeconds that it takes to find its origin
 * @param lookAhead moves that are looked ahead over, 1 or more
 */
public record MotionLimits(
    double acceleration,
    double travelAcceleration,
    double filamentAcceleration,
    double junctionDeviation,
    double plateSpeed,
    double heightSpeed,
    double filamentSpeed,
    double heating,
    double cooling,
    double plateHeating,
    double homingSeconds,
    int lookAhead) {

  /** A plain desktop printer. */
  public static final MotionLimits DEFAULT =
      new MotionLimits(1500, 2000, 1500, 0.05, 300, 15, 60, 2, 1, 0.5, 20, 32);

  public MotionLimits {
    positive("acceleration", acceleration);
    positive("travel acceleration", travelAcceleration);
    positive("filament acceleration", filamentAcceleration);
    positive("plate speed", plateSpeed);
    positive("height speed", heightSpeed);
    positive("filament speed", filamentSpeed);
    positive("heating", heating);
    positive("cooling", cooling);
    positive("plate heating", plateHeating);
    if (!(junctionDeviation >= 0) || !(homingSeconds >= 0) || lookAhead < 1) {
      throw new IllegalArgumentException(
          "junction deviation and homing are 0 or more and the look-ahead is 1 or more, not "
              + junctionDeviation
              + ", "
              + homingSeconds
              + " and "
              + lookAhead);
    }
  }

  private static void positive(String what, double value) {
    if (!(value > 0) || Double.isInfinite(value)) {
      throw new IllegalArgumentException(what + " is above 0, not " + value);
    }
  }

  /** The same with another acceleration of all moves. */
  public MotionLimits withAcceleration(double every) {
    return new MotionLimits(
        every,
        every,
        every,
        junctionDeviation,
        plateSpeed,
        heightSpeed,
        filamentSpeed,
        heating,
        cooling,
        plateHeating,
        homingSeconds,
        lookAhead);
  }

  /** The same with another junction deviation. */
  public MotionLimits withJunctionDeviation(double millimetres) {
    return new MotionLimits(
        acceleration,
        travelAcceleration,
        filamentAcceleration,
        millimetres,
        plateSpeed,
        heightSpeed,
        filamentSpeed,
        heating,
        cooling,
        plateHeating,
        homingSeconds,
        lookAhead);
  }

  /** The same with another look-ahead. */
  public MotionLimits withLookAhead(int moves) {
    return new MotionLimits(
        acceleration,
        travelAcceleration,
        filamentAcceleration,
        junctionDeviation,
        plateSpeed,
        heightSpeed,
        filamentSpeed,
        heating,
        cooling,
        plateHeating,
        homingSeconds,
        moves);
  }
}
