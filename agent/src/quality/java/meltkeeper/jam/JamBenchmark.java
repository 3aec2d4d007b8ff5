package meltkeeper.jam;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.Function;
import java.util.function.IntUnaryOperator;
import java.util.stream.LongStream;
import meltkeeper.jam.score.Alarms;
import meltkeeper.jam.score.Bounds;
import meltkeeper.jam.sim.Fault;
import meltkeeper.jam.sim.Score;
import meltkeeper.jam.sim.Signal;
import meltkeeper.jam.sim.Trial;
import meltkeeper.jam.sim.Way;

/**
 * Prints how well the jam watch does on simulated printers: false alarms in health, and for each
 * fault how many are warned of before the full stall and how long before, beside plain ways at no
 * more false alarms, each at the wariest limit that has none more. Its table stands in
 * docs/jam-watch.md.
 */
public final class JamBenchmark {

  /** Never used for tuning. */
  private static final long REPORTED = 7_000_000;

  private static final double HEALTHY_HOURS = 12;
  private static final double[] MELTING = {0, 0.03, 0.06, 0.09, 0.12, 1};

  private JamBenchmark() {}

  /** Takes the number of healthy printers and of faults of each kind, 300 and 400 if not given. */
  public static void main(String[] arguments) {
    int printers = arguments.length > 0 ? Integer.parseInt(arguments[0]) : 300;
    int faults = arguments.length > 1 ? Integer.parseInt(arguments[1]) : 400;
    List<Trial> healthy =
        LongStream.range(0, printers)
            .parallel()
            .mapToObj(i -> Trial.of(REPORTED + i, Fault.NONE, HEALTHY_HOURS))
            .toList();
    double hours = healthy.stream().mapToDouble(t -> t.truth().printingSeconds()).sum() / 3600;
    System.out.printf(Locale.ROOT, "Healthy printing: %.0f h on %d printers.%n%n", hours, printers);
    System.out.println("| watch | false alarms | per 1000 h (95 %) |\n|---|---|---|");
    for (Signal signal : Signal.values()) {
      count(signal.label(), healthy, hours, t -> t.watchedWith(signal));
    }
    int allowed = alarms(healthy, t -> t.watchedWith(Signal.ENCODER));
    Map<Way, Integer> places = new EnumMap<>(Way.class);
    for (Way way : Way.values()) {
      int place = wariest(way.limits(), i -> alarms(healthy, t -> t.plain().of(way, i)), allowed);
      places.put(way, place);
      String at = String.format(Locale.ROOT, "%s, limit %.2f", way.label(), way.limit(place));
      count(at, healthy, hours, t -> t.plain().of(way, place));
    }
    double blind =
        healthy.stream().mapToDouble(t -> t.blindSecondsWith(Signal.TEMPERATURE)).sum() / 3600;
    System.out.printf(Locale.ROOT, "%nWith temperature only it said blind for %.0f h.%n%n", blind);
    System.out.println(Score.heading());
    List<Trial> blocks = List.of();
    for (Fault fault : Fault.values()) {
      if (fault != Fault.NONE) {
        List<Trial> trials = print(fault, faults, places);
        blocks = fault == Fault.BLOCK ? trials : blocks;
      }
    }
    printByMelting(blocks);
  }

  private static List<Trial> print(Fault fault, int faults, Map<Way, Integer> places) {
    List<Trial> trials =
        LongStream.range(0, faults)
            .parallel()
            .mapToObj(
                i ->
                    Trial.of(
                        REPORTED + 100_000L * List.of(Fault.values()).indexOf(fault) + i,
                        fault,
                        1 + i % 5 * 0.5))
            .toList();
    List<String> rows = new ArrayList<>();
    for (Signal signal : List.of(Signal.ENCODER, Signal.NO_ENCODER)) {
      rows.add(row(signal.label(), fault, trials, t -> t.watchedWith(signal)));
    }
    places.forEach(
        (way, place) -> rows.add(row(way.label(), fault, trials, t -> t.plain().of(way, place))));
    if (fault == Fault.RUNOUT) {
      rows.add(row("runout switch", fault, trials, Trial::runoutSwitch));
    }
    rows.forEach(System.out::println);
    return trials;
  }

  /** What a heater can miss is what melting took of its duty. */
  private static void printByMelting(List<Trial> blocks) {
    System.out.printf(
        "%n| duty that melting takes | blocks | within 3 min | within 5 min | within 15 min |%n"
            + "|---|---|---|---|---|%n");
    for (int i = 0; i + 1 < MELTING.length; i++) {
      double from = MELTING[i];
      double to = MELTING[i + 1];
      List<Trial> some =
          blocks.stream()
              .filter(t -> t.truth().meltingDuty() >= from && t.truth().meltingDuty() < to)
              .toList();
      Score score = Score.of(some, t -> t.watchedWith(Signal.NO_ENCODER));
      System.out.printf(
          Locale.ROOT,
          "| %.0f to %.0f %% | %d | %.0f %% | %.0f %% | %.0f %% |%n",
          100 * from,
          100 * to,
          score.faults(),
          100 * score.within(180),
          100 * score.within(300),
          100 * score.within(900));
    }
  }

  private static String row(
      String what, Fault fault, List<Trial> trials, Function<Trial, Alarms> alarms) {
    return Score.of(trials, alarms).row(what, fault.label());
  }

  private static int alarms(List<Trial> healthy, Function<Trial, Alarms> alarms) {
    return healthy.stream().mapToInt(t -> alarms.apply(t).before(Double.POSITIVE_INFINITY)).sum();
  }

  /** The first setting, from wary to deaf, with no more false alarms; else the deafest. */
  private static int wariest(int settings, IntUnaryOperator alarms, int allowed) {
    for (int i = 0; i < settings - 1; i++) {
      if (alarms.applyAsInt(i) <= allowed) {
        return i;
      }
    }
    return settings - 1;
  }

  private static void count(
      String what, List<Trial> healthy, double hours, Function<Trial, Alarms> alarms) {
    int count = alarms(healthy, alarms);
    Bounds bounds = Bounds.ofCount(count);
    System.out.printf(
        Locale.ROOT,
        "| %s | %d | %.2f (%.2f-%.2f) |%n",
        what,
        count,
        1000 * count / hours,
        1000 * bounds.low() / hours,
        1000 * bounds.high() / hours);
  }
}
