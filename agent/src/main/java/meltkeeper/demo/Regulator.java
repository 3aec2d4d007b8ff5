package meltkeeper.demo;

/**
 * Keeps a hot end at its target: proportional, integral and derivative on the measured temperature.
 * The integral stands still while the heater is at either end of its range.
 */
final class Regulator {

  private final double wattsPerKelvin;
  private final double integralSeconds;
  private final double derivativeSeconds;
  private final double heaterWatts;

  private double integralWatts;
  private double lastCelsius = Double.NaN;

  Regulator(
      double wattsPerKelvin, double integralSeconds, double derivativeSeconds, double heaterWatts) {
    this.wattsPerKelvin = wattsPerKelvin;
    this.integralSeconds = integralSeconds;
    this.derivativeSeconds = derivativeSeconds;
    this.heaterWatts = heaterWatts;
  }

  /** The heater's duty for the coming step, 0 to 1; a target of 0 °C is off. */
  double duty(double seconds, double targetCelsius, double celsius) {
    double rate = Double.isNaN(lastCelsius) ? 0 : (celsius - lastCelsius) / seconds;
    lastCelsius = celsius;
    if (!(targetCelsius > 0)) {
      integralWatts = 0;
      return 0;
    }
    double error = targetCelsius - celsius;
    double moved = integralWatts + wattsPerKelvin / integralSeconds * error * seconds;
    double wanted = wattsPerKelvin * (error - derivativeSeconds * rate) + moved;
    if ((wanted <= heaterWatts || error < 0) && (wanted >= 0 || error > 0)) {
      integralWatts = moved;
    }
    return Math.min(1, Math.max(0, wanted / heaterWatts));
  }
}
