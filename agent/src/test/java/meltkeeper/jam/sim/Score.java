package meltkeeper.jam.sim;

import java.util.List;
import java.util.Locale;
import java.util.function.Function;
import meltkeeper.jam.score.Alarms;
import meltkeeper.jam.score.Bounds;
import meltkeeper.jam.score.Quantile;

/**
 * The scoring of faults of one class (our own rule): an alarm from the onset until the stall is
 * true, and its lead the time left; later or none is a lead of 0. Minutes.
 *
 * @param leads sorted
 * @param idealShares lead over that of the ideal CUSUM, sorted, of those where the ideal led
 * @param afterStop seconds from the beginning of the minute that made the stall to the alarm,
 *     sorted
 */
public record Score(
    int faults, int before, List<Double> leads, List<Double> idealShares, List<Double> afterStop) {

  /** What the minute that makes a full stall takes. */
  private static final double STALL_MINUTE = 60;

  public static Score of(List<Trial> trials, Function<Trial, Alarms> alarms) {
    List<Trial> stalled =
        trials.stream().filter(t -> Double.isFinite(t.truth().stallSeconds())).toList();
    List<Double> leads = stalled.stream().map(t -> lead(t, first(t, alarms))).sorted().toList();
    return new Score(
        stalled.size(),
        (int) leads.stream().filter(lead -> lead > 0).count(),
        leads,
        stalled.stream()
            .filter(t -> lead(t, t.truth().idealSeconds()) > 0)
            .map(t -> lead(t, first(t, alarms)) / lead(t, t.truth().idealSeconds()))
            .sorted()
            .toList(),
        stalled.stream()
            .map(t -> first(t, alarms) - t.truth().stallSeconds() + STALL_MINUTE)
            .sorted()
            .toList());
  }

  private static double first(Trial trial, Function<Trial, Alarms> alarms) {
    return alarms
        .apply(trial)
        .firstFrom(trial.truth().onsetSeconds())
        .orElse(Double.POSITIVE_INFINITY);
  }

  private static double lead(Trial trial, double alarm) {
    return Math.max(0, (trial.truth().stallSeconds() - alarm) / 60);
  }

  /** Share of faults with an alarm within that long after the flow stopped. */
  public double within(double seconds) {
    return (double) afterStop.stream().filter(s -> s <= seconds).count() / faults;
  }

  /** Share of faults warned of so many minutes before the stall, or earlier. */
  public double withLead(double minutes) {
    return (double) leads.stream().filter(lead -> lead >= minutes).count() / faults;
  }

  /** The value below which that share of a sorted list lies; 0 of none. */
  public static double at(List<Double> sorted, double share) {
    return sorted.isEmpty() ? 0 : Quantile.of(sorted, share);
  }

  /** One row of the table. */
  public String row(String what, String fault) {
    Bounds bounds = Bounds.ofShare(before, faults);
    return String.format(
        Locale.ROOT,
        "| %s | %s | %d | %.1f %% (%.1f-%.1f) | %.0f %% | %.0f %% | %.0f %% | %.1f | %.1f | %.0f %% | %.1f %% |"
            + " %.1f %% |",
        what,
        fault,
        faults,
        100.0 * before / faults,
        100 * bounds.low(),
        100 * bounds.high(),
        100 * withLead(1),
        100 * withLead(5),
        100 * withLead(10),
        at(leads, 0.1),
        at(leads, 0.5),
        100 * at(idealShares, 0.5),
        100 * within(30),
        100 * within(300));
  }

  /** The heading of the rows. */
  public static String heading() {
    return "| watch | fault | n | before stall (95 %) | 1 min before | 5 min | 10 min | lead 10 %, min |"
        + " median | of ideal's | within 30 s of stop | within 5 min |\n"
        + "|---|---|---|---|---|---|---|---|---|---|---|---|";
  }
}
