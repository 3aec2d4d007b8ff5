package meltkeeper.jam.sim;

/**
 * The encoder: dead zone at each reversal, slip by speed, wandering slip, missed pulses. Mutable.
 */
final class Wheel {

  /** Faster than any print, mm/s: a retraction or its return, against which nothing presses. */
  private static final double TUG_SPEED = 20;

  final boolean blind;
  final double pulse;
  private final double scale;
  private final double slip;
  private final double slipBend;
  private final double deadZone;
  private final double missed;
  private final Wander wander;
  private final Draw draw;

  private double play;
  private double turned;
  private long pulses;
  private long counted;

  Wheel(Draw draw) {
    this.draw = draw;
    blind = draw.chance(0.2);
    pulse = blind ? draw.oneOf(0.5, 1, 2, 3) : draw.oneOf(0.01, 0.05, 0.1, 0.5, 1, 2, 3);
    scale = draw.chance(0.15) ? draw.between(0.5, 2) : draw.between(0.95, 1.05);
    slip = draw.between(0, 0.003);
    slipBend = draw.between(0, 0.0002);
    deadZone = draw.scaled(0.1, 2);
    missed = draw.chance(0.5) ? 0 : draw.scaled(0.001, 0.03);
    wander = new Wander(draw.between(0.003, 0.012), draw.scaled(20, 600));
  }

  void move(double millimetres, double speed, double dt) {
    wander.step(dt, draw);
    double free = play + millimetres;
    double rest = free > deadZone ? free - deadZone : Math.min(0, free);
    play = Math.max(0, Math.min(deadZone, free));
    double lost =
        millimetres > 0 && speed < TUG_SPEED
            ? slip * speed + slipBend * speed * speed + wander.value()
            : 0;
    double seen = rest * (1 - lost) * scale;
    turned += blind ? Math.abs(seen) : seen;
    long now = (long) Math.floor(turned / pulse);
    long steps = now - pulses;
    pulses = now;
    if (missed > 0 && steps != 0) {
      for (long i = Math.abs(steps); i > 0; i--) {
        if (!draw.chance(missed)) {
          counted += Long.signum(steps);
        }
      }
    } else {
      counted += steps;
    }
  }

  double told() {
    return counted * pulse;
  }

  double scale() {
    return scale;
  }
}
