package meltkeeper.life;

/**
 * Ageing by temperature, in two languages: the halving interval H of thermal endurance tests (life
 * halves every H kelvin; the sense of IEC 60216, from memory) and the Arrhenius activation energy.
 * Constants are the exact ones of the SI of 2019.
 */
public final class Thermal {

  /** 0 °C in kelvin. */
  public static final double ZERO_CELSIUS = 273.15;

  /** Molar gas constant, J/(mol K). */
  public static final double GAS = 8.31446261815324;

  /** Boltzmann constant, eV/K. */
  public static final double BOLTZMANN = 8.617333262145e-5;

  private static final double LN2 = Math.log(2);

  private Thermal() {}

  /** Activation energy at which life halves from {@code celsius} to {@code celsius + H}, J/mol. */
  public static double energyHalvingUp(double celsius, double halvingKelvin) {
    double kelvin = celsius + ZERO_CELSIUS;
    return GAS * LN2 * kelvin * (kelvin + halvingKelvin) / halvingKelvin;
  }

  /** Activation energy at which life doubles from {@code celsius} to {@code celsius − H}, J/mol. */
  public static double energyDoublingDown(double celsius, double halvingKelvin) {
    double kelvin = celsius + ZERO_CELSIUS;
    return GAS * LN2 * kelvin * (kelvin - halvingKelvin) / halvingKelvin;
  }

  /** Activation energy whose ageing has the slope of the halving rule at {@code celsius}, J/mol. */
  public static double energyTangent(double celsius, double halvingKelvin) {
    double kelvin = celsius + ZERO_CELSIUS;
    return GAS * LN2 * kelvin * kelvin / halvingKelvin;
  }

  /** The inverse of {@link #energyHalvingUp}: kelvin, from J/mol above R ln 2 · T. */
  public static double halvingOf(double celsius, double joulesPerMole) {
    double kelvin = celsius + ZERO_CELSIUS;
    return kelvin * kelvin / (joulesPerMole / (GAS * LN2) - kelvin);
  }

  /** J/mol in electronvolts for one molecule. */
  public static double electronvolts(double joulesPerMole) {
    return joulesPerMole / GAS * BOLTZMANN;
  }

  /** Ageing at {@code celsius} as a multiple of that at the reference: 2^((T − Tref)/H). */
  public static double halvingRate(double celsius, double referenceCelsius, double halvingKelvin) {
    return Math.exp((celsius - referenceCelsius) / halvingKelvin * LN2);
  }

  /** The same by Arrhenius: exp(Ea/R · (1/Tref − 1/T)). */
  public static double arrheniusRate(
      double celsius, double referenceCelsius, double joulesPerMole) {
    return Math.exp(
        joulesPerMole
            / GAS
            * (1 / (referenceCelsius + ZERO_CELSIUS) - 1 / (celsius + ZERO_CELSIUS)));
  }

  /** The covariate of an Arrhenius regression, 1/(k T), 1/eV: its slope is Ea in eV. */
  public static double arrheniusCovariate(double celsius) {
    return 1 / (BOLTZMANN * (celsius + ZERO_CELSIUS));
  }

  /** Reference hours of a linear ramp that takes {@code hours}. */
  public static double rampHours(
      double hours,
      double fromCelsius,
      double toCelsius,
      double referenceCelsius,
      double halvingKelvin) {
    double rise = (toCelsius - fromCelsius) / halvingKelvin * LN2;
    double start = halvingRate(fromCelsius, referenceCelsius, halvingKelvin);
    return hours * start * (Math.abs(rise) < 1e-12 ? 1 : Math.expm1(rise) / rise);
  }
}
