package meltkeeper.jam.sim;

import java.util.EnumMap;
import java.util.Map;
import java.util.Objects;
import meltkeeper.jam.Watch;
import meltkeeper.jam.WatchSettings;
import meltkeeper.jam.score.Alarms;

/**
 * One episode seen by the watch with each set of signals and by the plain ways, all on the very
 * same readings.
 *
 * @param blindSeconds for each set of signals
 * @param forecasts of the stall, by the watch with an encoder
 * @param runoutSwitch alarms of a switch on the filament's way, which knows of nothing but its end
 */
public record Trial(
    Fault fault,
    Truth truth,
    Map<Signal, Alarms> watched,
    Map<Signal, Double> blindSeconds,
    Forecasts forecasts,
    Plain plain,
    Alarms runoutSwitch) {

  private static final double USUAL_FALSE_ALARM_HOURS = 1000;

  /** A trial of a watch with its usual limits. */
  public static Trial of(long seed, Fault fault, double healthyHours) {
    return of(new Episode(seed, fault, healthyHours), fault, USUAL_FALSE_ALARM_HOURS);
  }

  /** A trial on a printer of the demo. */
  public static Trial ofDemo(long seed, Fault fault, double healthyHours) {
    return of(new DemoCourse(seed, fault, healthyHours), fault, USUAL_FALSE_ALARM_HOURS);
  }

  /** A trial of a watch that is to alarm falsely once in so many hours. */
  public static Trial of(Course course, Fault fault, double falseAlarmHours) {
    WatchSettings settings = new WatchSettings(falseAlarmHours, 150, 40, course.encoderIsBlind());
    Map<Signal, Watch> watches = new EnumMap<>(Signal.class);
    Map<Signal, Alarms> alarms = new EnumMap<>(Signal.class);
    for (Signal signal : Signal.values()) {
      watches.put(signal, Watch.opened(course.hotEnd(), settings));
      alarms.put(signal, new Alarms());
    }
    Plain plain = new Plain(course.encoderScale());
    Forecasts forecasts = new Forecasts();
    Watch withEncoder = Objects.requireNonNull(watches.get(Signal.ENCODER));
    Truth truth =
        course.run(
            reading -> {
              plain.take(reading);
              watches.forEach(
                  (signal, watch) -> {
                    if (signal.tells(reading)) {
                      watch
                          .step(reading)
                          .ifPresent(
                              finding ->
                                  Objects.requireNonNull(alarms.get(signal))
                                      .at(finding.atNanos() / 1e9, finding.level().isJam()));
                    }
                  });
              forecasts.look(reading.sample().atNanos() / 1e9, withEncoder.outlook());
            });
    Alarms runoutSwitch = new Alarms();
    if (fault == Fault.RUNOUT) {
      runoutSwitch.at(truth.onsetSeconds(), true);
    }
    Map<Signal, Double> blind = new EnumMap<>(Signal.class);
    watches.forEach((signal, watch) -> blind.put(signal, watch.blindNanos() / 1e9));
    return new Trial(fault, truth, alarms, blind, forecasts, plain, runoutSwitch);
  }

  /** The alarms of the watch with those signals. */
  public Alarms watchedWith(Signal signal) {
    return Objects.requireNonNull(watched.get(signal));
  }

  /** How long the watch with those signals said that it is blind. */
  public double blindSecondsWith(Signal signal) {
    return blindSeconds.getOrDefault(signal, 0.0);
  }
}
