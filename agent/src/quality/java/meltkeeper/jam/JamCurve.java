package meltkeeper.jam;

import java.util.List;
import java.util.Locale;
import java.util.function.Function;
import java.util.stream.LongStream;
import meltkeeper.jam.score.Alarms;
import meltkeeper.jam.score.Bounds;
import meltkeeper.jam.sim.Episode;
import meltkeeper.jam.sim.Fault;
import meltkeeper.jam.sim.Score;
import meltkeeper.jam.sim.Signal;
import meltkeeper.jam.sim.Trial;
import meltkeeper.jam.sim.Way;

/**
 * Prints what is gained and lost by another limit: of clogs the share that is warned of five
 * minutes before the stall or earlier, of blocks the share called within five minutes of the stop,
 * beside the false alarms, from wary to deaf, for the watch and for the plain ways. Its table
 * stands in docs/jam-watch.md.
 */
public final class JamCurve {

  /** Never used for tuning. */
  private static final long REPORTED = 7_500_000;

  private static final double HEALTHY_HOURS = 12;
  private static final double[] INTERVALS = {10, 100, 1000, 10_000};
  private static final int EVERY_LIMIT = 4;

  /** The same printers, with one setting of the watch. */
  private record Trials(List<Trial> healthy, List<Trial> clogs, List<Trial> blocks) {

    static Trials of(int printers, int faults, double falseAlarmHours) {
      return new Trials(
          run(REPORTED, printers, Fault.NONE, HEALTHY_HOURS, falseAlarmHours),
          run(REPORTED + 100_000, faults, Fault.CLOG, 2, falseAlarmHours),
          run(REPORTED + 200_000, faults, Fault.BLOCK, 2, falseAlarmHours));
    }

    private static List<Trial> run(
        long seed, int count, Fault fault, double healthyHours, double falseAlarmHours) {
      return LongStream.range(0, count)
          .parallel()
          .mapToObj(
              i -> Trial.of(new Episode(seed + i, fault, healthyHours), fault, falseAlarmHours))
          .toList();
    }

    /** Prints a row; the number of false alarms. */
    int print(String what, String limit, Function<Trial, Alarms> alarms) {
      double hours = healthy.stream().mapToDouble(t -> t.truth().printingSeconds()).sum() / 3600;
      int count =
          healthy.stream().mapToInt(t -> alarms.apply(t).before(Double.POSITIVE_INFINITY)).sum();
      Bounds bounds = Bounds.ofCount(count);
      System.out.printf(
          Locale.ROOT,
          "| %s | %s | %.1f (%.1f-%.1f) | %.0f %% | %.0f %% |%n",
          what,
          limit,
          1000 * count / hours,
          1000 * bounds.low() / hours,
          1000 * bounds.high() / hours,
          100 * Score.of(clogs, alarms).withLead(5),
          100 * Score.of(blocks, alarms).within(300));
      return count;
    }
  }

  private JamCurve() {}

  /** Takes the number of healthy printers and of faults of each kind, 300 and 400 if not given. */
  public static void main(String[] arguments) {
    int printers = arguments.length > 0 ? Integer.parseInt(arguments[0]) : 300;
    int faults = arguments.length > 1 ? Integer.parseInt(arguments[1]) : 400;
    System.out.println(
        "| watch | limit | false alarms in 1000 h (95 %) | clogs, 5 min before the stall |"
            + " blocks, 5 min after |\n|---|---|---|---|---|");
    for (double interval : INTERVALS) {
      Trials trials = Trials.of(printers, faults, interval);
      String limit = String.format(Locale.ROOT, "%.0fh", interval);
      for (Signal signal : List.of(Signal.ENCODER, Signal.NO_ENCODER)) {
        trials.print(signal.label(), limit, t -> t.watchedWith(signal));
      }
      if (interval == INTERVALS[INTERVALS.length - 1]) {
        printPlain(trials);
      }
    }
  }

  /** From wary to the first limit at which nothing alarms falsely any more. */
  private static void printPlain(Trials trials) {
    for (Way way : List.of(Way.THRESHOLD, Way.EWMA, Way.TAUGHT_CUSUM)) {
      int count = 1;
      for (int place = 0; place < way.limits() && count > 0; place += EVERY_LIMIT) {
        int at = place;
        count =
            trials.print(
                way.label(),
                String.format(Locale.ROOT, "%.2f", way.limit(place)),
                t -> t.plain().of(way, at));
      }
    }
  }
}
