package meltkeeper.endure;

import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import meltkeeper.part.Exposure;

/**
 * The course of a printer that is always hot: one straight line of temperature over time, a reading
 * every five seconds of the printer's own clock, and filament fed at a steady pace. A gap that is
 * bridged along the line credits exactly what the missing readings would have, so that the truth
 * about any stretch is known whatever was lost on the way.
 *
 * @param kelvinPerReading slope; the line begins at 190 °C and must end below 600 °C
 */
public record Ramp(double kelvinPerReading) {

  public static final long EVERY_NANOS = 5_000_000_000L;

  /** 2026-03-29T00:50:00Z: ten minutes later, clocks in many countries go forward an hour. */
  public static final long BEGAN_NANOS = 1_774_745_400_000_000_000L;

  public static final long MICROMETRES_PER_READING = 1_500;

  private static final double FROM_CELSIUS = 190;

  /** When the reading of that number was taken. */
  public static long nanos(long number) {
    return BEGAN_NANOS + number * EVERY_NANOS;
  }

  public double celsius(long number) {
    return FROM_CELSIUS + kelvinPerReading * number;
  }

  /** What the printer publishes. */
  public String payload(long number) {
    return String.format(
        Locale.ROOT,
        "{\"at\":%d,\"now\":%.8f,\"asked\":%.3f}",
        nanos(number) / 1_000_000,
        celsius(number),
        number * MICROMETRES_PER_READING / 1000.0);
  }

  /** Hot nanoseconds in each band from the first reading to the one taken at {@code untilNanos}. */
  public Map<Integer, Double> nanosByBand(long untilNanos) {
    Map<Integer, Double> nanos = new TreeMap<>();
    double kelvinPerNano = kelvinPerReading / EVERY_NANOS;
    double until = FROM_CELSIUS + kelvinPerNano * (untilNanos - BEGAN_NANOS);
    for (int band = (int) FROM_CELSIUS; band < until; band += Exposure.BAND_CELSIUS) {
      nanos.put(band, (Math.min(band + Exposure.BAND_CELSIUS, until) - band) / kelvinPerNano);
    }
    return nanos;
  }
}
