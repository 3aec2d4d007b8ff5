package meltkeeper.jam;

import java.util.List;
import java.util.Locale;
import java.util.function.Function;
import java.util.stream.LongStream;
import meltkeeper.jam.score.Alarms;
import meltkeeper.jam.score.Bounds;
import meltkeeper.jam.sim.Fault;
import meltkeeper.jam.sim.Score;
import meltkeeper.jam.sim.Signal;
import meltkeeper.jam.sim.Trial;

/**
 * Prints how well the jam watch does on the printers of the demo, a simulator of another make that
 * nothing was tuned to. Its table stands in docs/jam-watch.md.
 */
public final class OtherMake {

  private static final long REPORTED = 6_000_000;
  private static final double HEALTHY_HOURS = 12;

  /** Those that its printers know. */
  private static final List<Fault> FAULTS = List.of(Fault.CLOG, Fault.BLOCK, Fault.RUNOUT);

  private OtherMake() {}

  /** Takes the number of healthy printers and of faults of each kind, 300 and 400 if not given. */
  public static void main(String[] arguments) {
    int printers = arguments.length > 0 ? Integer.parseInt(arguments[0]) : 300;
    int faults = arguments.length > 1 ? Integer.parseInt(arguments[1]) : 400;
    List<Trial> healthy = run(REPORTED, printers, Fault.NONE, i -> HEALTHY_HOURS);
    double hours = healthy.stream().mapToDouble(t -> t.truth().printingSeconds()).sum() / 3600;
    System.out.printf(
        Locale.ROOT,
        "Healthy printing: %.0f h on %d printers.%n%n"
            + "| watch | false alarms | per 1000 h (95 %%) |%n|---|---|---|%n",
        hours,
        printers);
    List<Signal> signals = List.of(Signal.ENCODER, Signal.NO_ENCODER);
    for (Signal signal : signals) {
      int count =
          healthy.stream()
              .mapToInt(t -> t.watchedWith(signal).before(Double.POSITIVE_INFINITY))
              .sum();
      Bounds bounds = Bounds.ofCount(count);
      System.out.printf(
          Locale.ROOT,
          "| %s | %d | %.2f (%.2f-%.2f) |%n",
          signal.label(),
          count,
          1000 * count / hours,
          1000 * bounds.low() / hours,
          1000 * bounds.high() / hours);
    }
    System.out.printf("%n%s%n", Score.heading());
    for (Fault fault : FAULTS) {
      List<Trial> trials =
          run(
              REPORTED + 100_000L * (1 + FAULTS.indexOf(fault)),
              faults,
              fault,
              i -> 1.2 + i % 5 * 0.5);
      for (Signal signal : signals) {
        Function<Trial, Alarms> alarms = t -> t.watchedWith(signal);
        System.out.println(Score.of(trials, alarms).row(signal.label(), fault.label()));
      }
    }
  }

  private static List<Trial> run(
      long seed, int count, Fault fault, Function<Long, Double> healthyHours) {
    return LongStream.range(0, count)
        .parallel()
        .mapToObj(i -> Trial.ofDemo(seed + i, fault, healthyHours.apply(i)))
        .toList();
  }
}
