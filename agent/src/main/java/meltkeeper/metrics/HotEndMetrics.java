package meltkeeper.metrics;

import static meltkeeper.metrics.ShopMetric.counter;
import static meltkeeper.metrics.ShopMetric.gauge;

import java.util.List;
import java.util.OptionalDouble;
import java.util.function.BiConsumer;
import java.util.function.Function;
import java.util.function.ToLongFunction;
import meltkeeper.ledger.Tally;
import meltkeeper.metrics.ShopMetric.Out;
import meltkeeper.part.Exposure;
import meltkeeper.pipeline.HotEndLive;
import meltkeeper.protocol.JobState;

/**
 * What each hot end did and does. Counters show what is committed, so that none falls, not even
 * across a restart.
 */
final class HotEndMetrics {

  private static final List<String> HOT_END = List.of("printer", "hot_end");
  private static final double NANOS = 1e9;
  private static final double MICROMETRES = 1e6;

  static final List<ShopMetric> ALL =
      List.of(
          counter(
              "hot_end_hot_seconds",
              List.of("printer", "hot_end", "band"),
              "Time that a hot end spent above its hot threshold, by temperature in bands of 5 degrees Celsius.",
              HotEndMetrics::bands),
          counter(
              "bridged_seconds",
              HOT_END,
              "Hot time that was credited across a gap in the telemetry; part of the hot time.",
              perTally(Tally::bridgedNanos, NANOS)),
          counter(
              "unobserved_seconds",
              HOT_END,
              "Time in gaps of the telemetry that was not credited though the hot end may have been hot.",
              perTally(Tally::unobservedNanos, NANOS)),
          counter(
              "idle_seconds",
              HOT_END,
              "Hot time in which no filament was fed; part of the hot time.",
              perTally(Tally::idleNanos, NANOS)),
          counter(
              "printing_seconds",
              HOT_END,
              "Time that a hot end was printing.",
              perTally(Tally::printingNanos, NANOS)),
          counter(
              "filament_commanded_meters",
              HOT_END,
              "Filament that the printer asked its feed for, net of retractions.",
              perTally(Tally::commandedMicrometres, MICROMETRES)),
          counter(
              "filament_measured_meters",
              HOT_END,
              "Filament that an encoder saw move, net of retractions; 0 where the printer has none.",
              perTally(Tally::measuredMicrometres, MICROMETRES)),
          gauge(
              "hot_end_celsius",
              HOT_END,
              "Temperature of the hot end when it was last heard.",
              perHotEnd(end -> end.live().celsius())),
          gauge(
              "hot_end_target_celsius",
              HOT_END,
              "Temperature that the hot end is asked to hold; 0 is off.",
              perHotEnd(end -> end.live().targetCelsius())),
          gauge(
              "hot_end_threshold_celsius",
              HOT_END,
              "Time above this temperature counts as hot.",
              perHotEnd(end -> OptionalDouble.of(end.hotAboveCelsius()))),
          gauge(
              "hot_end_limit_celsius",
              HOT_END,
              "Temperature that the fitted parts must not exceed; absent when none of them has a limit.",
              perHotEnd(HotEndSight::limitCelsius)),
          gauge(
              "hot_end_printing",
              HOT_END,
              "1 while the printer says that it is printing, else 0; absent when it does not say.",
              perHotEnd(HotEndMetrics::printing)),
          gauge(
              "hot_end_silent_seconds",
              HOT_END,
              "Time since the latest reading of the hot end; absent when none came since the start.",
              perHotEnd(HotEndMetrics::silent)),
          gauge(
              "jam_level",
              HOT_END,
              "What the jam watch sees: 0 clear, 1 narrowing, 2 stalled, -1 blind because the printer tells too little.",
              perHotEnd(end -> OptionalDouble.of(end.live().watch().level().code()))),
          gauge(
              "jam_evidence",
              List.of("printer", "hot_end", "detector"),
              "Evidence of a jam by detector, 1 being the warning limit; absent for a detector that has no say.",
              HotEndMetrics::evidence));

  private HotEndMetrics() {}

  private static void bands(Sight sight, Out out) {
    for (HotEndSight end : sight.hotEnds()) {
      end.live()
          .total()
          .exposure()
          .bands()
          .forEach(
              (band, heat) ->
                  out.add(
                      heat.nanos() / NANOS,
                      printer(end.live()),
                      index(end.live()),
                      Exposure.bandName(band)));
    }
  }

  private static void evidence(Sight sight, Out out) {
    for (HotEndSight end : sight.hotEnds()) {
      end.live()
          .watch()
          .evidence()
          .forEach(
              (detector, evidence) ->
                  out.add(evidence, printer(end.live()), index(end.live()), detector.word()));
    }
  }

  private static OptionalDouble printing(HotEndSight end) {
    return end.live().state().isEmpty()
        ? OptionalDouble.empty()
        : OptionalDouble.of(end.live().state().get() == JobState.PRINTING ? 1 : 0);
  }

  private static OptionalDouble silent(HotEndSight end) {
    return end.silentNanos().isEmpty()
        ? OptionalDouble.empty()
        : OptionalDouble.of(end.silentNanos().getAsLong() / NANOS);
  }

  private static BiConsumer<Sight, Out> perTally(ToLongFunction<Tally> amount, double perUnit) {
    return perHotEnd(end -> OptionalDouble.of(amount.applyAsLong(end.live().total()) / perUnit));
  }

  private static BiConsumer<Sight, Out> perHotEnd(Function<HotEndSight, OptionalDouble> value) {
    return (sight, out) -> {
      for (HotEndSight end : sight.hotEnds()) {
        value.apply(end).ifPresent(v -> out.add(v, printer(end.live()), index(end.live())));
      }
    };
  }

  private static String printer(HotEndLive live) {
    return live.hotEnd().printer();
  }

  private static String index(HotEndLive live) {
    return String.valueOf(live.hotEnd().index());
  }
}
