package meltkeeper.metrics;

import io.prometheus.metrics.model.snapshots.CounterSnapshot;
import io.prometheus.metrics.model.snapshots.GaugeSnapshot;
import io.prometheus.metrics.model.snapshots.Labels;
import io.prometheus.metrics.model.snapshots.MetricSnapshot;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.BiConsumer;
import java.util.function.Function;
import java.util.function.ToLongFunction;
import meltkeeper.ledger.Tally;
import meltkeeper.part.Exposure;
import meltkeeper.pipeline.HotEndLive;
import meltkeeper.protocol.HotEnd;
import meltkeeper.protocol.Rejected;

/**
 * One series of the shop.
 *
 * @param name without the prefix and, for a counter, without {@code _total}
 * @param help for a stranger
 * @param values what the sight gives
 */
record ShopMetric(String name, Form form, String help, BiConsumer<Sight, ShopMetric.Out> values) {

  /**
   * All of them. A counter never falls while the agent runs, nor across a restart: it shows what is
   * committed.
   */
  static final List<ShopMetric> ALL =
      List.of(
          new ShopMetric(
              "hot_end_hot_seconds",
              Form.COUNTER,
              "Time above the hot threshold, by 5 degree band.",
              (sight, out) -> {
                for (HotEndLive hotEnd : sight.live().hotEnds()) {
                  hotEnd
                      .total()
                      .exposure()
                      .bands()
                      .forEach(
                          (band, heat) ->
                              out.add(
                                  heat.nanos() / 1e9,
                                  labels(hotEnd).add("band", Exposure.bandName(band))));
                }
              }),
          new ShopMetric(
              "bridged_seconds",
              Form.COUNTER,
              "Hot time that was credited across a gap in the telemetry; part of the hot time.",
              perHotEnd(Tally::bridgedNanos, 1e9)),
          new ShopMetric(
              "unobserved_seconds",
              Form.COUNTER,
              "Time that was not credited though the hot end may have been hot.",
              perHotEnd(Tally::unobservedNanos, 1e9)),
          new ShopMetric(
              "idle_seconds",
              Form.COUNTER,
              "Hot time without feeding; part of the hot time.",
              perHotEnd(Tally::idleNanos, 1e9)),
          new ShopMetric(
              "printing_seconds",
              Form.COUNTER,
              "Time printing.",
              perHotEnd(Tally::printingNanos, 1e9)),
          new ShopMetric(
              "filament_commanded_meters",
              Form.COUNTER,
              "Filament asked for, net of retractions.",
              perHotEnd(Tally::commandedMicrometres, 1e6)),
          new ShopMetric(
              "filament_measured_meters",
              Form.COUNTER,
              "Filament seen to move, net of retractions.",
              perHotEnd(Tally::measuredMicrometres, 1e6)),
          new ShopMetric(
              "hot_end_celsius",
              Form.GAUGE,
              "Temperature of the hot end.",
              perHotEnd(HotEndLive::celsius)),
          new ShopMetric(
              "hot_end_target_celsius",
              Form.GAUGE,
              "Temperature that the hot end is asked to hold; 0 is off.",
              perHotEnd(HotEndLive::targetCelsius)),
          new ShopMetric(
              "jam_level",
              Form.GAUGE,
              "Jam watch: 0 clear, 1 narrowing, 2 stalled, -1 blind for want of signals.",
              perHotEnd(hotEnd -> OptionalDouble.of(hotEnd.watch().level().code()))),
          new ShopMetric(
              "jam_evidence",
              Form.GAUGE,
              "Evidence of a jam by detector, as a fraction of its warning limit.",
              (sight, out) -> {
                for (HotEndLive hotEnd : sight.live().hotEnds()) {
                  hotEnd
                      .watch()
                      .evidence()
                      .forEach(
                          (detector, evidence) ->
                              out.add(evidence, labels(hotEnd).add("detector", detector.word())));
                }
              }),
          new ShopMetric(
              "part_hot_seconds",
              Form.GAUGE,
              "Hot time over the life of a fitted part, by 5 degree band; a late entry may lower it.",
              (sight, out) -> {
                for (FittedPart part : sight.parts()) {
                  part.exposure()
                      .bands()
                      .forEach(
                          (band, heat) ->
                              out.add(
                                  heat.nanos() / 1e9,
                                  labels(part).add("band", Exposure.bandName(band))));
                }
              }),
          new ShopMetric(
              "part_filament_meters",
              Form.GAUGE,
              "Filament fed through a fitted part over its life.",
              (sight, out) -> {
                for (FittedPart part : sight.parts()) {
                  out.add(part.filamentMicrometres() / 1e6, labels(part));
                }
              }),
          new ShopMetric(
              "part_reference_seconds",
              Form.GAUGE,
              "Age of a fitted part: its hot time converted to the reference temperature.",
              (sight, out) -> {
                for (PartForecast part : sight.forecasts()) {
                  out.add(part.referenceSeconds(), labels(part));
                }
              }),
          new ShopMetric(
              "part_failure_probability",
              Form.GAUGE,
              "Probability that a fitted part fails within a horizon at the present duty, 0 to 1.",
              (sight, out) -> {
                for (PartForecast part : sight.forecasts()) {
                  part.failsWithin24Hours()
                      .ifPresent(p -> out.add(p, labels(part).add("horizon", "24h")));
                  part.failsWithin7Days()
                      .ifPresent(p -> out.add(p, labels(part).add("horizon", "7d")));
                }
              }),
          new ShopMetric(
              "part_replace_in_seconds",
              Form.GAUGE,
              "Time until a fitted part reaches its advised age at the present duty; 0 is due.",
              (sight, out) -> {
                for (PartForecast part : sight.forecasts()) {
                  part.replaceInSeconds().ifPresent(s -> out.add(s, labels(part)));
                }
              }),
          new ShopMetric(
              "source_up",
              Form.GAUGE,
              "1 while a broker or a printer's link is connected, else 0.",
              (sight, out) ->
                  sight
                      .sources()
                      .forEach(
                          (name, up) -> out.add(up ? 1 : 0, new LabelSet().add("source", name)))),
          new ShopMetric(
              "alerts",
              Form.COUNTER,
              "Alerts by route since the start: delivered, failed (a try that will be repeated) or"
                  + " dead (given up).",
              (sight, out) -> {
                for (RouteSight route : sight.routes()) {
                  out.add((double) route.delivered(), labels(route).add("outcome", "delivered"));
                  out.add((double) route.failed(), labels(route).add("outcome", "failed"));
                  out.add((double) route.dead(), labels(route).add("outcome", "dead"));
                }
              }),
          new ShopMetric(
              "alerts_waiting",
              Form.GAUGE,
              "Alerts that wait on a route, at most 200 being counted.",
              (sight, out) ->
                  sight.routes().forEach(route -> out.add(route.waiting(), labels(route)))),
          new ShopMetric(
              "alert_route_up",
              Form.GAUGE,
              "1 while the last try on a route of alerts went well, else 0.",
              (sight, out) ->
                  sight.routes().forEach(route -> out.add(route.isUp() ? 1 : 0, labels(route)))),
          new ShopMetric(
              "messages",
              Form.COUNTER,
              "Messages and lines taken in since the start.",
              (sight, out) -> out.add((double) sight.live().received(), new LabelSet())),
          new ShopMetric(
              "readings",
              Form.COUNTER,
              "Readings made of them since the start.",
              (sight, out) -> out.add((double) sight.live().readings(), new LabelSet())),
          new ShopMetric(
              "rejected",
              Form.COUNTER,
              "What could not be read or credited since the start, by reason.",
              (sight, out) -> {
                for (Rejected.Reason reason : Rejected.Reason.values()) {
                  out.add(
                      (double) sight.live().rejected().getOrDefault(reason, 0L),
                      new LabelSet().add("reason", reason.label()));
                }
              }),
          new ShopMetric(
              "commits",
              Form.COUNTER,
              "Commits to the store since the start.",
              (sight, out) -> out.add((double) sight.live().commits(), new LabelSet())),
          new ShopMetric(
              "store_up",
              Form.GAUGE,
              "1 while the store takes commits, 0 while they wait in memory.",
              (sight, out) -> out.add(sight.live().trouble().isEmpty() ? 1 : 0, new LabelSet())));

  /** Whether a series only grows. */
  enum Form {
    COUNTER,
    GAUGE
  }

  /** Takes a metric's values. */
  interface Out {
    void add(double value, LabelSet labels);
  }

  /** A growing set of labels. */
  static final class LabelSet {
    private Labels labels = Labels.EMPTY;

    LabelSet add(String name, String value) {
      labels = labels.add(name, value);
      return this;
    }
  }

  private String prometheusName() {
    return "meltkeeper_" + name;
  }

  MetricSnapshot snapshot(Sight sight) {
    if (form == Form.COUNTER) {
      CounterSnapshot.Builder builder = CounterSnapshot.builder().name(prometheusName()).help(help);
      values.accept(
          sight,
          (value, labels) ->
              builder.dataPoint(
                  CounterSnapshot.CounterDataPointSnapshot.builder()
                      .value(value)
                      .labels(labels.labels)
                      .build()));
      return builder.build();
    }
    GaugeSnapshot.Builder builder = GaugeSnapshot.builder().name(prometheusName()).help(help);
    values.accept(
        sight,
        (value, labels) ->
            builder.dataPoint(
                GaugeSnapshot.GaugeDataPointSnapshot.builder()
                    .value(value)
                    .labels(labels.labels)
                    .build()));
    return builder.build();
  }

  private static BiConsumer<Sight, Out> perHotEnd(ToLongFunction<Tally> amount, double perUnit) {
    return (sight, out) -> {
      for (HotEndLive hotEnd : sight.live().hotEnds()) {
        out.add(amount.applyAsLong(hotEnd.total()) / perUnit, labels(hotEnd));
      }
    };
  }

  private static BiConsumer<Sight, Out> perHotEnd(Function<HotEndLive, OptionalDouble> value) {
    return (sight, out) -> {
      for (HotEndLive hotEnd : sight.live().hotEnds()) {
        value.apply(hotEnd).ifPresent(v -> out.add(v, labels(hotEnd)));
      }
    };
  }

  private static LabelSet labels(RouteSight route) {
    return new LabelSet().add("route", route.name());
  }

  private static LabelSet labels(HotEndLive hotEnd) {
    return labels(hotEnd.hotEnd());
  }

  private static LabelSet labels(HotEnd hotEnd) {
    return new LabelSet()
        .add("printer", hotEnd.printer())
        .add("hot_end", String.valueOf(hotEnd.index()));
  }

  private static LabelSet labels(PartForecast part) {
    return labels(part.hotEnd()).add("part", part.id()).add("kind", part.kind());
  }

  private static LabelSet labels(FittedPart part) {
    return labels(part.hotEnd()).add("part", part.id()).add("kind", part.kind());
  }
}
