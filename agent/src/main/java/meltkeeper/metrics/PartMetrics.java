package meltkeeper.metrics;

import static meltkeeper.metrics.ShopMetric.gauge;

import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import meltkeeper.metrics.ShopMetric.Out;
import meltkeeper.part.Exposure;
import meltkeeper.protocol.HotEnd;

/**
 * What the parts on the printers have been through, and what lies ahead of them. All gauges: a late
 * entry moves hours from part to part, and the halving interval is learned.
 */
final class PartMetrics {

  private static final List<String> PART = List.of("printer", "hot_end", "part", "kind");
  private static final double NANOS = 1e9;
  private static final double MICROMETRES = 1e6;

  static final List<ShopMetric> ALL =
      List.of(
          gauge(
              "part_fitted",
              PART,
              "1 while a part is on a printer, 0 for a short time after it was taken off; then its series leave.",
              (sight, out) -> {
                for (ShownPart part : sight.parts()) {
                  out.add(part.isFitted() ? 1 : 0, labels(part));
                }
              }),
          gauge(
              "part_hot_seconds",
              with("band"),
              "Hot time over the whole life of a part, by temperature in bands of 5 degrees Celsius.",
              PartMetrics::bands),
          gauge(
              "part_filament_meters",
              PART,
              "Filament fed through a part over its whole life.",
              (sight, out) -> {
                for (ShownPart part : sight.parts()) {
                  out.add(part.filamentMicrometres() / MICROMETRES, labels(part));
                }
              }),
          gauge(
              "part_reference_seconds",
              PART,
              "Age of a fitted part: its hot time converted to the reference temperature of its kind.",
              (sight, out) -> {
                for (PartForecast part : sight.forecasts()) {
                  out.add(part.referenceSeconds(), labels(part));
                }
              }),
          gauge(
              "part_failure_probability",
              with("horizon"),
              "Probability, 0 to 1, that a fitted part fails within 24h or 7d at the duty of the last four weeks;"
                  + " absent while that is not known.",
              PartMetrics::probabilities),
          gauge(
              "part_replace_in_seconds",
              PART,
              "Time until a fitted part reaches the age at which replacing it is cheapest, at the duty of the last"
                  + " four weeks; 0 when due, absent when waiting for the failure is cheapest.",
              (sight, out) -> {
                for (PartForecast part : sight.forecasts()) {
                  part.replaceInSeconds().ifPresent(s -> out.add(s, labels(part)));
                }
              }));

  private PartMetrics() {}

  private static List<String> with(String label) {
    return Stream.concat(PART.stream(), Stream.of(label)).toList();
  }

  private static void bands(Sight sight, Out out) {
    for (ShownPart part : sight.parts()) {
      part.exposure()
          .bands()
          .forEach(
              (band, heat) -> out.add(heat.nanos() / NANOS, labels(part, Exposure.bandName(band))));
    }
  }

  private static void probabilities(Sight sight, Out out) {
    for (PartForecast part : sight.forecasts()) {
      probability(part, part.failsWithin24Hours(), "24h", out);
      probability(part, part.failsWithin7Days(), "7d", out);
    }
  }

  private static void probability(PartForecast part, OptionalDouble p, String horizon, Out out) {
    p.ifPresent(value -> out.add(value, labels(part.hotEnd(), part.id(), part.kind(), horizon)));
  }

  private static String[] labels(PartForecast part) {
    return labels(part.hotEnd(), part.id(), part.kind());
  }

  private static String[] labels(ShownPart part, String... more) {
    return labels(part.hotEnd(), part.id(), part.kind(), more);
  }

  private static String[] labels(HotEnd hotEnd, String id, String kind, String... more) {
    return Stream.concat(
            Stream.of(hotEnd.printer(), String.valueOf(hotEnd.index()), id, kind), Stream.of(more))
        .toArray(String[]::new);
  }
}
