package meltkeeper.protocol.motion;

/**
 * The way that a move takes through space.
 *
 * @param length mm
 * @param radius of an arc, infinite for a straight line, mm
 */
record Path(double length, double radius, Direction start, Direction end) {

  /** A straight line along a difference, mm. */
  static Path straight(double x, double y, double z) {
    Direction direction = Direction.of(x, y, z);
    return new Path(
        Math.sqrt(x * x + y * y + z * z), Double.POSITIVE_INFINITY, direction, direction);
  }

  /**
   * An arc in the plane of the plate, rising evenly (a helix), as RS274/NGC section 3.5.3 has it; a
   * whole circle when it ends where it began.
   *
   * @param x from its beginning to its end, mm; so y and z
   * @param centreX from its beginning to its centre, mm; so centreY
   */
  static Path arc(double x, double y, double z, double centreX, double centreY, boolean clockwise) {
    double radius = Math.hypot(centreX, centreY);
    if (!(radius > 0)) {
      return straight(x, y, z);
    }
    double from = Math.atan2(-centreY, -centreX);
    double to = Math.atan2(y - centreY, x - centreX);
    double sweep = clockwise ? from - to : to - from;
    while (sweep <= 1e-9) {
      sweep += 2 * Math.PI;
    }
    double flat = radius * sweep;
    double turn = clockwise ? -1 : 1;
    double rise = z / sweep;
    return new Path(
        Math.hypot(flat, z),
        radius,
        Direction.of(-turn * Math.sin(from) * radius, turn * Math.cos(from) * radius, rise),
        Direction.of(-turn * Math.sin(to) * radius, turn * Math.cos(to) * radius, rise));
  }

  /**
   * An arc by its radius: the shorter of the two for a radius above 0, the longer for one below; a
   * radius too short to reach is taken as half of the chord.
   */
  static Path arc(double x, double y, double z, double radius, boolean clockwise) {
    double chord = Math.hypot(x, y);
    if (!(chord > 0)) {
      return straight(x, y, z);
    }
    double away = Math.sqrt(Math.max(0, radius * radius - chord * chord / 4));
    boolean left = clockwise == radius < 0;
    double side = (left ? 1 : -1) * away / chord;
    return arc(x, y, z, x / 2 - side * y, y / 2 + side * x, clockwise);
  }
}
