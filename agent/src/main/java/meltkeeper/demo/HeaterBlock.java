package meltkeeper.demo;

/**
 * A hot end as one lump of metal with a heater and a lagging thermistor.
 *
 * <p>{@code C dT/dt = P - G (T - ambient) - melt}, and {@code lag dS/dt = T - S}. Each step is the
 * exact solution for power and melt heat held constant over it.
 */
final class HeaterBlock {

  /** Temperature of the room, and of the filament that comes in, °C. */
  static final double AMBIENT_CELSIUS = 25;

  /** Loss to still air, W/K. */
  static final double LOSS = 0.045;

  /** Further loss with the part fan at full speed, W/K. */
  static final double FAN_LOSS = 0.01;

  /** Heat capacity, J/K. */
  static final double CAPACITY = 14;

  private static final double LAG_SECONDS = 3;

  private double blockCelsius = AMBIENT_CELSIUS;
  private double sensorCelsius = AMBIENT_CELSIUS;

  /**
   * Goes on by a step, in seconds, with power net of melt heat, in watts, and a fan from 0 to 1.
   */
  void step(double seconds, double netWatts, double fan) {
    double loss = LOSS + FAN_LOSS * fan;
    double settles = AMBIENT_CELSIUS + netWatts / loss;
    double stays = StrictMath.exp(-loss * seconds / CAPACITY);
    double before = blockCelsius;
    blockCelsius = settles + (blockCelsius - settles) * stays;
    double middle = (before + blockCelsius) / 2;
    sensorCelsius = middle + (sensorCelsius - middle) * StrictMath.exp(-seconds / LAG_SECONDS);
  }

  double blockCelsius() {
    return blockCelsius;
  }

  double sensorCelsius() {
    return sensorCelsius;
  }
}
