package meltkeeper.jam.sim;

/**
 * Block, sleeve and sensor with a controller that acts ten times a second on a noisy, counted
 * temperature; draughts, fan, and a mains voltage that drifts. Two lumps, so that the block's
 * answer is not that of one. Mutable.
 */
final class Heat {

  private static final double ROOM = 24;

  private final Draw draw;
  final double watts;
  private final double loss;
  private final double capacity;
  private final double sleeve;
  private final double coupling;
  private final double lag;
  private final double proportional;
  private final double integralSeconds;
  private final double derivative;
  private final double noise;
  private final double count;
  private final double fanWatts;
  private final double perCubicMm;
  private final Wander air;
  private final Wander mains = new Wander(0.008, 1800);
  private final Wander thickness = new Wander(0.01, 3000);

  private double block = ROOM;
  private double mass = ROOM;
  private double sensor = ROOM;
  private double shown = ROOM;
  private double lastSensor = ROOM;
  private double integral;
  private double duty;
  private double gustWatts;
  private double gustLeft;
  private double creepWatts;
  private double melting;

  Heat(Draw draw) {
    this.draw = draw;
    watts = draw.oneOf(30, 40, 40, 50, 60) * draw.between(0.95, 1.05);
    loss = draw.between(0.03, 0.055);
    capacity = draw.between(6, 16);
    sleeve = draw.between(2, 10);
    coupling = draw.between(0.2, 1);
    lag = draw.between(1, 6);
    proportional = draw.scaled(0.8, 3);
    integralSeconds = draw.between(15, 60);
    derivative = draw.between(0, 3);
    noise = draw.between(0.03, 0.25);
    count = draw.oneOf(0.01, 0.1, 0.25, 0.5);
    fanWatts = draw.between(0.3, 3);
    perCubicMm = draw.between(0.4, 0.55);
    air = new Wander(draw.between(0.05, 0.5), draw.scaled(5, 90));
  }

  void step(double dt, double target, double moltenMm, double fan) {
    double volts = Math.max(0.96, Math.min(1.04, 1 + mains.step(dt, draw)));
    double area =
        2.405 * Math.pow(1 + Math.max(-0.03, Math.min(0.03, thickness.step(dt, draw))), 2);
    gust(dt);
    double cooling = air.step(dt, draw) + gustWatts + fanWatts * fan;
    double melt = Math.max(0, moltenMm) * area * perCubicMm * (block - ROOM) / 190;
    melting = melt / dt / watts;
    double power = duty * watts * volts * volts * dt;
    double across = coupling * (block - mass) * dt;
    block +=
        (power - melt - across - (cooling + creepWatts) * dt * Math.min(1, (block - ROOM) / 100))
            / capacity;
    mass += (across - loss * (mass - ROOM) * dt) / sleeve;
    lastSensor = sensor;
    sensor += (block - sensor) * dt / lag;

    shown = Math.round((sensor + draw.normal(noise)) / count) * count;
    control(dt, target);
  }

  private void gust(double dt) {
    gustLeft -= dt;
    if (gustLeft <= 0) {
      gustWatts = 0;
      if (draw.chance(dt / 3600)) {
        gustWatts = draw.between(0.5, 3);
        gustLeft = draw.scaled(30, 900);
      }
    }
  }

  private void control(double dt, double target) {
    if (target <= 0) {
      duty = 0;
      integral = 0;
      return;
    }
    double error = target - shown;
    double wanted = proportional * (error - derivative * (sensor - lastSensor) / dt) + integral;
    if (Math.abs(error) < 15) {
      integral += proportional / integralSeconds * error * dt;
      integral = Math.max(0, Math.min(watts, integral));
    }
    duty = Math.max(0, Math.min(1, wanted / watts));
  }

  /** The heat break's fan fails: less flows into the break, so that the heater needs less. */
  void breakFanFails(double dt) {
    creepWatts += (-1.3 - creepWatts) * dt / 200;
  }

  /** Share of the heater's watts that melting takes now. */
  double meltingDuty() {
    return melting;
  }

  double celsius() {
    return shown;
  }

  double duty() {
    return duty;
  }
}
