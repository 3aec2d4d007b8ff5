package meltkeeper.protocol.motion;

/** A direction in space, of length 1; or none, for a move of the filament alone. */
record Direction(double x, double y, double z) {

  static final Direction NONE = new Direction(0, 0, 0);

  static Direction of(double x, double y, double z) {
    double length = Math.sqrt(x * x + y * y + z * z);
    return length > 0 ? new Direction(x / length, y / length, z / length) : NONE;
  }

  /** Cosine of the angle by which a path turns that goes on in another direction: 1 is straight. */
  double turnTo(Direction next) {
    return Math.max(-1, Math.min(1, x * next.x + y * next.y + z * next.z));
  }
}
