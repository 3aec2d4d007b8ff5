package meltkeeper.cli;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * One day of a printer in closed form, its corners at whole tens of seconds: each hour heats from
 * 25 to 225 °C in 100 s, prints at 225 °C until 2,000 s, at 237 °C from 2,010 s to 3,400 s, and
 * cools to 25 °C until 3,500 s.
 */
final class Day {

  static final int SECONDS = 86_400;
  static final int EVERY = 10;
  static final Instant BEGIN = Instant.parse("2026-03-02T00:00:00Z");

  /** In one hour: the last 75 of 200 K up, to 237, and the first 87 of 212 K down. */
  static final double HOT_SECONDS = 24 * (100 * 75 / 200.0 + 3300 + 100 * 87 / 212.0);

  /** The same by band, each with its plateau and its share of the three slopes. */
  static Map<Integer, Double> secondsByBand() {
    Map<Integer, Double> seconds = new TreeMap<>();
    for (int band = 150; band < 240; band += 5) {
      double kelvin = Math.min(band + 5, 237) - band;
      double slope = band < 225 ? 100 * kelvin / 200 : 10 * kelvin / 12;
      double plateau = band == 225 ? 1900 : band == 235 ? 1390 : 0;
      seconds.put(band, 24 * (slope + plateau + 100 * kelvin / 212));
    }
    return seconds;
  }

  private Day() {}

  static double celsius(int second) {
    int at = second % 3600;
    if (at < 100) {
      return 25 + 2.0 * at;
    }
    if (at < 2000) {
      return 225;
    }
    if (at < 2010) {
      return 225 + 1.2 * (at - 2000);
    }
    return at < 3400 ? 237 : Math.max(25, 237 - 2.12 * (at - 3400));
  }

  static String payload(int second) {
    return String.format(
        java.util.Locale.ROOT,
        "{\"at\":\"%s\",\"hotend\":{\"now\":%.2f,\"set\":%d},\"feed\":{\"asked\":%.1f}}",
        BEGIN.plus(Duration.ofSeconds(second)),
        celsius(second),
        second % 3600 < 3400 ? 230 : 0,
        second * 1.5);
  }

  /** Every ten seconds. */
  static List<Integer> samples(int from, int until) {
    List<Integer> samples = new ArrayList<>();
    for (int second = from; second < until; second += EVERY) {
      samples.add(second);
    }
    return samples;
  }
}
