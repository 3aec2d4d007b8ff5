package meltkeeper.part;

import java.util.Map;
import java.util.NavigableMap;
import java.util.TreeMap;
import java.util.function.DoubleUnaryOperator;

/**
 * Hot time by temperature: for each 5 °C band, how long and how hot on average. The common coin of
 * ledger, parts and life. Immutable; sums are exact in integer nanoseconds, so that order never
 * matters.
 *
 * @param bands by the band's lower edge in °C, a multiple of {@link #BAND_CELSIUS}
 */
public record Exposure(NavigableMap<Integer, Heat> bands) {

  /** Width of a band, °C. */
  public static final int BAND_CELSIUS = 5;

  /** No hot time at all. */
  public static final Exposure NONE = new Exposure(new TreeMap<>());

  public Exposure {
    NavigableMap<Integer, Heat> copy = new TreeMap<>();
    bands.forEach(
        (band, heat) -> {
          if (Math.floorMod(band, BAND_CELSIUS) != 0) {
            throw new IllegalArgumentException(
                "a band begins at a multiple of " + BAND_CELSIUS + " degrees, not at " + band);
          }
          if (!heat.equals(Heat.NONE)) {
            copy.put(band, heat);
          }
        });
    bands = java.util.Collections.unmodifiableNavigableMap(copy);
  }

  /**
   * Time in one band.
   *
   * @param nanos how long
   * @param microCelsiusSeconds the integral of the temperature over that time, 1e-6 °C·s
   */
  public record Heat(long nanos, long microCelsiusSeconds) {

    public static final Heat NONE = new Heat(0, 0);

    public Heat plus(Heat other) {
      return new Heat(
          Math.addExact(nanos, other.nanos),
          Math.addExact(microCelsiusSeconds, other.microCelsiusSeconds));
    }

    public Heat minus(Heat other) {
      return plus(new Heat(-other.nanos, -other.microCelsiusSeconds));
    }

    /** The mean temperature, °C; NaN for no time. */
    public double meanCelsius() {
      return microCelsiusSeconds * 1e-6 / (nanos * 1e-9);
    }

    /** The share of it that falls into {@code part} of {@code whole} nanoseconds, rounded down. */
    public Heat share(long part, long whole) {
      return new Heat(
          Exposure.share(nanos, part, whole), Exposure.share(microCelsiusSeconds, part, whole));
    }
  }

  /** {@code value · part / whole} without overflow, rounded towards zero. */
  public static long share(long value, long part, long whole) {
    return java.math.BigInteger.valueOf(value)
        .multiply(java.math.BigInteger.valueOf(part))
        .divide(java.math.BigInteger.valueOf(whole))
        .longValueExact();
  }

  /** Hours at one temperature. */
  public static Exposure of(double celsius, double hours) {
    long nanos = Math.round(hours * 3600e9);
    return new Exposure(
        new TreeMap<>(
            Map.of(bandOf(celsius), new Heat(nanos, Math.round(celsius * hours * 3600e6)))));
  }

  /**
   * The lower edge of the band that a temperature falls into; an edge belongs to the band above.
   */
  public static int bandOf(double celsius) {
    return (int) Math.floor(celsius / BAND_CELSIUS) * BAND_CELSIUS;
  }

  /** A band's name, {@code 215-220}. */
  public static String bandName(int lowerCelsius) {
    return lowerCelsius + "-" + (lowerCelsius + BAND_CELSIUS);
  }

  public Exposure plus(Exposure other) {
    if (other.bands.isEmpty()) {
      return this;
    }
    NavigableMap<Integer, Heat> sum = new TreeMap<>(bands);
    other.bands.forEach((band, heat) -> sum.merge(band, heat, Heat::plus));
    return new Exposure(sum);
  }

  public Exposure minus(Exposure other) {
    NavigableMap<Integer, Heat> rest = new TreeMap<>(bands);
    other.bands.forEach((band, heat) -> rest.merge(band, Heat.NONE.minus(heat), Heat::plus));
    return new Exposure(rest);
  }

  /** The share of it that falls into {@code part} of {@code whole} nanoseconds, rounded down. */
  public Exposure share(long part, long whole) {
    NavigableMap<Integer, Heat> shares = new TreeMap<>();
    bands.forEach((band, heat) -> shares.put(band, heat.share(part, whole)));
    return new Exposure(shares);
  }

  /** The time in the band with that lower edge. */
  public Heat in(int lowerCelsius) {
    return bands.getOrDefault(lowerCelsius, Heat.NONE);
  }

  /** All hot time, nanoseconds. */
  public long hotNanos() {
    long sum = 0;
    for (Heat heat : bands.values()) {
      sum += heat.nanos();
    }
    return sum;
  }

  /** All hot time, hours. */
  public double hotHours() {
    return hotNanos() / 3600e9;
  }

  /** Σ hours(T) · weight(T), each band at its mean temperature. */
  public double weightedHours(DoubleUnaryOperator weightAtCelsius) {
    double sum = 0;
    for (Heat heat : bands.values()) {
      sum += heat.nanos() / 3600e9 * weightAtCelsius.applyAsDouble(heat.meanCelsius());
    }
    return sum;
  }

  /**
   * Reference hours: Σ hours(T) · 2^((T − Tref)/H).
   *
   * @param referenceCelsius Tref
   * @param halvingKelvin H, the halving interval, above 0
   */
  public double referenceHours(double referenceCelsius, double halvingKelvin) {
    return weightedHours(celsius -> Math.pow(2, (celsius - referenceCelsius) / halvingKelvin));
  }
}
