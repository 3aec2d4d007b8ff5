package meltkeeper.jam;

import java.util.List;
import java.util.Locale;
import java.util.stream.LongStream;
import meltkeeper.jam.score.Bounds;
import meltkeeper.jam.score.Quantile;
import meltkeeper.jam.sim.Fault;
import meltkeeper.jam.sim.Forecasts;
import meltkeeper.jam.sim.Trial;

/**
 * Prints how often the range of minutes to a stall holds the truth, on simulated printers with an
 * encoder: for the first that is told of a fault, and for all until the stall, one a minute. Its
 * table stands in docs/jam-watch.md.
 */
public final class StallForecast {

  /** Never used for tuning. */
  private static final long REPORTED = 9_500_000;

  private StallForecast() {}

  /** Takes the number of faults of each kind, 400 if not given. */
  public static void main(String[] arguments) {
    int faults = arguments.length > 0 ? Integer.parseInt(arguments[0]) : 400;
    System.out.println(
        "| fault | told of | first range holds (95 %) | all ranges, mean of faults |"
            + " minutes left at the first, 10 % | median | 90 % |\n|---|---|---|---|---|---|---|");
    for (Fault fault : List.of(Fault.CLOG, Fault.HEAT_CREEP, Fault.GRINDING)) {
      print(
          fault,
          LongStream.range(0, faults)
              .parallel()
              .mapToObj(
                  i ->
                      Trial.of(
                          REPORTED + 100_000L * List.of(Fault.values()).indexOf(fault) + i,
                          fault,
                          1))
              .filter(trial -> !told(trial).isEmpty())
              .toList());
    }
  }

  private static List<Forecasts.Told> told(Trial trial) {
    double stall = trial.truth().stallSeconds();
    return Double.isFinite(stall)
        ? trial.forecasts().between(trial.truth().onsetSeconds(), stall)
        : List.of();
  }

  private static boolean firstHolds(Trial trial) {
    return told(trial).get(0).holds(trial.truth().stallSeconds());
  }

  private static double shareThatHolds(Trial trial) {
    List<Forecasts.Told> told = told(trial);
    double stall = trial.truth().stallSeconds();
    return (double) told.stream().filter(range -> range.holds(stall)).count() / told.size();
  }

  private static void print(Fault fault, List<Trial> trials) {
    int hold = (int) trials.stream().filter(StallForecast::firstHolds).count();
    Bounds bounds = Bounds.ofShare(hold, trials.size());
    List<Double> left =
        trials.stream()
            .map(trial -> told(trial).get(0).minutesLeft(trial.truth().stallSeconds()))
            .sorted()
            .toList();
    System.out.printf(
        Locale.ROOT,
        "| %s | %d | %.1f %% (%.1f-%.1f) | %.1f %% | %.1f | %.1f | %.1f |%n",
        fault.label(),
        trials.size(),
        100.0 * hold / trials.size(),
        100 * bounds.low(),
        100 * bounds.high(),
        100 * trials.stream().mapToDouble(StallForecast::shareThatHolds).average().orElse(0),
        Quantile.of(left, 0.1),
        Quantile.of(left, 0.5),
        Quantile.of(left, 0.9));
  }
}
