package meltkeeper.protocol.motion;

/**
 * One move as a machine makes it.
 *
 * @param length along its path, mm; above 0
 * @param speed that it may reach, mm/s; above 0
 * @param acceleration mm/s²; above 0
 * @param start direction at its beginning
 * @param end direction at its end; another one for an arc
 * @param lays true when it lays filament
 */
record Move(
    double length,
    double speed,
    double acceleration,
    Direction start,
    Direction end,
    boolean lays) {

  /**
   * The fastest that the corner from this move to the next may be taken at. The corner is cut in
   * thought by a circle that touches both lines and passes the corner at the junction deviation δ:
   * a circle of radius R about a point on the bisector, R / sin(θ/2) from the corner, where θ is
   * the angle between the lines, so that δ = R / sin(θ/2) − R and R = δ sin(θ/2) / (1 − sin(θ/2)).
   * On it the centripetal acceleration v² / R may be what the moves may accelerate by.
   */
  double junctionSpeed(Move next, double deviation) {
    double limit = Math.min(speed, next.speed);
    if (end.equals(Direction.NONE) || next.start.equals(Direction.NONE)) {
      return 0;
    }
    double sine = Math.sqrt((1 + end.turnTo(next.start)) / 2);
    if (1 - sine < STRAIGHT) {
      return limit;
    }
    double radius = deviation * sine / (1 - sine);
    return Math.min(limit, Math.sqrt(Math.min(acceleration, next.acceleration) * radius));
  }

  /** Rounding makes a straight path turn by this little. */
  private static final double STRAIGHT = 1e-12;

  /** The fastest that it can begin at when it must end at a speed, or the other way round. */
  double reachable(double fromSpeed) {
    return Math.sqrt(fromSpeed * fromSpeed + 2 * acceleration * length);
  }

  /** Seconds from one speed to another, both reachable: speeds up, holds, slows down. */
  double seconds(double entry, double exit) {
    double peakSquared = acceleration * length + (entry * entry + exit * exit) / 2;
    double peak = Math.max(Math.max(entry, exit), Math.min(speed, Math.sqrt(peakSquared)));
    double held = length - (2 * peak * peak - entry * entry - exit * exit) / (2 * acceleration);
    return (2 * peak - entry - exit) / acceleration + Math.max(0, held) / peak;
  }
}
