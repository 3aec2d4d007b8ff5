package meltkeeper.jam;

/**
 * What the watch of a hot end goes by.
 *
 * @param falseAlarmHours printing hours wanted between two false alarms, 1 to 1,000,000
 * @param hotAboveCelsius the hot threshold, 0 to 600
 * @param heaterWatts power of the heater at full duty, above 0; where learning starts from
 * @param encoderIsBlind true for an encoder that counts both directions up
 */
public record WatchSettings(
    double falseAlarmHours, double hotAboveCelsius, double heaterWatts, boolean encoderIsBlind) {

  /** Where nothing is configured. */
  public static final WatchSettings DEFAULT = new WatchSettings(1000, 150, 40, false);

  public WatchSettings {
    check(falseAlarmHours >= 1 && falseAlarmHours <= 1e6, "1 to 1000000 h", falseAlarmHours);
    check(hotAboveCelsius >= 0 && hotAboveCelsius <= 600, "0 to 600 °C", hotAboveCelsius);
    check(heaterWatts > 0 && heaterWatts <= 10_000, "above 0, at most 10000 W", heaterWatts);
  }

  /** The same with another number of printing hours between two false alarms. */
  public WatchSettings withFalseAlarmHours(double hours) {
    return new WatchSettings(hours, hotAboveCelsius, heaterWatts, encoderIsBlind);
  }

  private static void check(boolean possible, String allowed, double found) {
    if (!possible) {
      throw new IllegalArgumentException(found + " is not " + allowed);
    }
  }
}
