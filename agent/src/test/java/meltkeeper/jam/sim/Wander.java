package meltkeeper.jam.sim;

/** A value that wanders about zero: an Ornstein-Uhlenbeck process. Mutable. */
final class Wander {

  private final double spread;
  private final double seconds;
  private double value;

  Wander(double spread, double seconds) {
    this.spread = spread;
    this.seconds = seconds;
  }

  double step(double dt, Draw draw) {
    double stays = Math.exp(-dt / seconds);
    value = value * stays + Math.sqrt(1 - stays * stays) * draw.normal(spread);
    return value;
  }

  double value() {
    return value;
  }
}
