package meltkeeper.protocol.motion;

/** One hot end on its way to its target, at a steady rate, then holding it. */
final class Heater {

  private final int index;
  private final double heating;
  private final double cooling;
  private final Heat heat;
  private double celsius;
  private double target;
  private double held;

  Heater(int index, double ambientCelsius, double heating, double cooling, Heat heat) {
    this.index = index;
    this.heating = heating;
    this.cooling = cooling;
    this.heat = heat;
    this.celsius = ambientCelsius;
    this.target = ambientCelsius;
  }

  int index() {
    return index;
  }

  double celsius() {
    return celsius;
  }

  /** Where it shall go; never below the temperature of the room. */
  void aim(double celsiusAsked, double ambientCelsius) {
    tellHeld();
    target = Math.max(ambientCelsius, celsiusAsked);
  }

  /** Seconds until it is there; 0 where it only cools and nobody waits for that. */
  double secondsToTarget(boolean waitsForCooling) {
    if (celsius > target) {
      return waitsForCooling ? (celsius - target) / cooling : 0;
    }
    return (target - celsius) / heating;
  }

  void pass(double seconds) {
    double underway = Math.min(seconds, secondsToTarget(true));
    if (underway > 0) {
      double before = celsius;
      celsius =
          underway < seconds ? target : before + underway * (target > before ? heating : -cooling);
      heat.during(index, before, celsius, underway);
    }
    held += seconds - underway;
  }

  void tellHeld() {
    if (held > 0) {
      heat.during(index, celsius, celsius, held);
      held = 0;
    }
  }
}
