package meltkeeper.ledger;

import meltkeeper.part.Exposure;

/**
 * The straight line between two temperature readings.
 *
 * @param fromNanos time of the first
 * @param fromCelsius its temperature
 * @param untilNanos time of the second, later
 * @param untilCelsius its temperature
 */
record TemperatureLine(long fromNanos, double fromCelsius, long untilNanos, double untilCelsius) {

  /** The hot part of the line; empty when {@code fromNanos} equals {@code untilNanos}. */
  record Hot(long fromNanos, long untilNanos) {}

  /** When the line is above the threshold. */
  Hot above(double threshold) {
    boolean hotAtFirst = fromCelsius > threshold;
    boolean hotAtLast = untilCelsius > threshold;
    if (hotAtFirst && hotAtLast) {
      return new Hot(fromNanos, untilNanos);
    }
    if (hotAtFirst) {
      return new Hot(fromNanos, crossing(threshold));
    }
    return hotAtLast ? new Hot(crossing(threshold), untilNanos) : new Hot(untilNanos, untilNanos);
  }

  /** Gives each band its share of the hot part, to the nanosecond. */
  void credit(Hot hot, Credits credits) {
    boolean falls = untilCelsius < fromCelsius;
    double first = hot.fromNanos() == fromNanos ? fromCelsius : celsiusAt(hot.fromNanos());
    int band = falls ? bandBelow(first) : Exposure.bandOf(first);
    long from = hot.fromNanos();
    while (from < hot.untilNanos()) {
      int edge = falls ? band : band + Exposure.BAND_CELSIUS;
      boolean leaves = falls ? untilCelsius < edge : untilCelsius > edge;
      long until =
          leaves ? Math.max(from, Math.min(hot.untilNanos(), crossing(edge))) : hot.untilNanos();
      credits.heat(band, this, from, until);
      from = until;
      band += falls ? -Exposure.BAND_CELSIUS : Exposure.BAND_CELSIUS;
    }
  }

  /** A falling line that begins on an edge is in the band below it at once. */
  private static int bandBelow(double celsius) {
    int band = Exposure.bandOf(celsius);
    return band == celsius ? band - Exposure.BAND_CELSIUS : band;
  }

  private long crossing(double celsius) {
    double share = (celsius - fromCelsius) / (untilCelsius - fromCelsius);
    return fromNanos + Math.round(share * (untilNanos - fromNanos));
  }

  private double celsiusAt(long nanos) {
    double share = (double) (nanos - fromNanos) / (untilNanos - fromNanos);
    return fromCelsius + (untilCelsius - fromCelsius) * share;
  }

  /** The integral of the temperature over a piece of the line, 1e-6 °C·s. */
  long heat(long from, long until) {
    double middle = (celsiusAt(from) + celsiusAt(until)) / 2;
    return Math.round(middle * (until - from) * 1e-3);
  }
}
