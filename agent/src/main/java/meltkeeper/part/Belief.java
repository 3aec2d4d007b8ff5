package meltkeeper.part;

/**
 * What a shop believes of a kind's life before its own parts have spoken.
 *
 * @param lifeHours median of the characteristic life, reference hours, above 0
 * @param spread standard deviation of its natural logarithm, above 0
 * @param shape median of the Weibull shape, above 0
 * @param shapeSpread standard deviation of its natural logarithm, above 0
 * @param halving mean of the halving interval, kelvin, above {@link #MIN_HALVING}
 * @param halvingSpread its standard deviation, kelvin, above 0
 * @param atCelsius the reference temperature, 0 to 600 °C
 */
public record Belief(
    double lifeHours,
    double spread,
    double shape,
    double shapeSpread,
    double halving,
    double halvingSpread,
    double atCelsius) {

  /** A halving interval is believed to be above this, kelvin. */
  public static final double MIN_HALVING = 3;

  /** Shape spread where none is given. */
  public static final double DEFAULT_SHAPE_SPREAD = 0.4;

  /** Halving spread where none is given, kelvin. */
  public static final double DEFAULT_HALVING_SPREAD = 3;

  public Belief {
    positive("life-hours", lifeHours);
    positive("spread", spread);
    positive("shape", shape);
    positive("shape-spread", shapeSpread);
    positive("halving", halving - MIN_HALVING);
    positive("halving-spread", halvingSpread);
    if (!(atCelsius >= 0 && atCelsius <= 600)) {
      throw new IllegalArgumentException(
          "a belief holds at 0 to 600 degrees Celsius, not " + atCelsius);
    }
  }

  private static void positive(String what, double value) {
    if (!(value > 0) || Double.isInfinite(value)) {
      throw new IllegalArgumentException("a belief's " + what + " is out of its range");
    }
  }
}
