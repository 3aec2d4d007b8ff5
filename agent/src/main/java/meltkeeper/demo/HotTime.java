package meltkeeper.demo;

import java.util.NavigableMap;
import java.util.TreeMap;

/**
 * Time above a threshold by 5 °C band, under the straight lines between points. Written apart from
 * the ledger, and in floating point, so that one can be held against the other.
 */
public final class HotTime {

  private static final double BAND_CELSIUS = 5;

  private final double thresholdCelsius;
  private final NavigableMap<Integer, Double> secondsByBand = new TreeMap<>();
  private long lastNanos = Long.MIN_VALUE;
  private double lastCelsius;

  public HotTime(double thresholdCelsius) {
    this.thresholdCelsius = thresholdCelsius;
  }

  /** Draws the line on to a point, later than the last. */
  public void to(long nanos, double celsius) {
    if (lastNanos != Long.MIN_VALUE) {
      add((nanos - lastNanos) * 1e-9, lastCelsius, celsius);
    }
    lastNanos = nanos;
    lastCelsius = celsius;
  }

  /** Seconds by the band's lower edge, °C. */
  public NavigableMap<Integer, Double> secondsByBand() {
    return new TreeMap<>(secondsByBand);
  }

  /** Seconds in all. */
  public double seconds() {
    return secondsByBand.values().stream().mapToDouble(Double::doubleValue).sum();
  }

  private void add(double seconds, double first, double last) {
    double low = Math.min(first, last);
    double high = Math.max(first, last);
    if (high <= thresholdCelsius) {
      return;
    }
    if (high == low) {
      secondsByBand.merge(bandOf(low), seconds, Double::sum);
      return;
    }
    double from = Math.max(low, thresholdCelsius);
    for (int band = bandOf(from); band < high; band += (int) BAND_CELSIUS) {
      double overlap = Math.min(high, band + BAND_CELSIUS) - Math.max(from, band);
      secondsByBand.merge(band, seconds * overlap / (high - low), Double::sum);
    }
  }

  private static int bandOf(double celsius) {
    return (int) (Math.floor(celsius / BAND_CELSIUS) * BAND_CELSIUS);
  }
}
