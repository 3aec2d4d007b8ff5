package meltkeeper.metrics.otlp;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import io.opentelemetry.proto.common.v1.KeyValue;
import io.opentelemetry.proto.metrics.v1.AggregationTemporality;
import io.opentelemetry.proto.metrics.v1.Metric;
import io.opentelemetry.proto.metrics.v1.NumberDataPoint;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import meltkeeper.metrics.FullSight;
import meltkeeper.metrics.Metrics;
import meltkeeper.testing.ThreadLeaks;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;

@ExtendWith(ThreadLeaks.class)
class OtlpPushTest {

  @TempDir private Path folder;

  private OtlpSettings settings(Collector collector) throws IOException {
    return new OtlpSettings(
        collector.url(),
        Duration.ofMillis(50),
        Map.of(),
        Optional.of(Files.writeString(folder.resolve("token"), "a-token\n")),
        Duration.ofSeconds(5));
  }

  private static Map<String, Metric> metrics(Collector.Push push) {
    return push.request().getResourceMetrics(0).getScopeMetrics(0).getMetricsList().stream()
        .collect(Collectors.toMap(Metric::getName, Function.identity()));
  }

  private static Metric named(Collector.Push push, String name) {
    return Objects.requireNonNull(metrics(push).get(name), name);
  }

  private static Map<String, String> words(List<KeyValue> attributes) {
    return attributes.stream()
        .collect(Collectors.toMap(KeyValue::getKey, a -> a.getValue().getStringValue()));
  }

  /** Those of garbage collection come with the first collection, perhaps after the first push. */
  private static boolean wasThereAtTheFirstPush(String name) {
    return !name.startsWith("jvm_gc_");
  }

  @Test
  void push_decodedByTheReceiver_carriesEveryMetric() throws IOException {
    try (Collector collector = new Collector();
        Metrics metrics = new Metrics(FullSight::of);
        OtlpPush push = new OtlpPush(settings(collector), "0a1b2c3d", metrics::snapshots)) {
      await("a second push").until(() -> collector.pushes().size() >= 2);

      assertThat(push.trouble()).isEmpty();
      Collector.Push first = collector.pushes().get(0);
      assertThat(first.contentType()).isEqualTo("application/x-protobuf");
      assertThat(first.authorization()).isEqualTo("Bearer a-token");
      assertThat(words(first.request().getResourceMetrics(0).getResource().getAttributesList()))
          .containsEntry("service.name", "meltkeeper")
          .containsEntry("service.instance.id", "0a1b2c3d");

      assertThat(metrics(first).keySet())
          .containsAll(
              metrics.snapshots().stream()
                  .map(family -> family.getMetadata().getPrometheusName())
                  .filter(OtlpPushTest::wasThereAtTheFirstPush)
                  .toList());
      Metric hot = named(first, "meltkeeper_hot_end_hot_seconds");
      assertThat(hot.getUnit()).isEqualTo("s");
      assertThat(hot.getSum().getIsMonotonic()).isTrue();
      assertThat(hot.getSum().getAggregationTemporality())
          .isEqualTo(AggregationTemporality.AGGREGATION_TEMPORALITY_CUMULATIVE);
      NumberDataPoint band =
          hot.getSum().getDataPointsList().stream()
              .filter(
                  point ->
                      words(point.getAttributesList())
                          .equals(Map.of("printer", "heron", "hot_end", "0", "band", "215-220")))
              .findFirst()
              .orElseThrow();
      assertThat(band.getAsDouble()).isEqualTo(7200);
      assertThat(band.getTimeUnixNano()).isGreaterThanOrEqualTo(band.getStartTimeUnixNano());
      assertThat(named(first, "meltkeeper_hot_end_celsius").getUnit()).isEqualTo("Cel");
      assertThat(named(first, "meltkeeper_jam_level").getGauge().getDataPointsList())
          .extracting(NumberDataPoint::getAsDouble)
          .containsExactlyInAnyOrder(1.0, -1.0);
    }
  }

  @Test
  void push_afterOneThatWasRefused_goesOn() throws IOException {
    try (Collector collector = new Collector();
        Metrics metrics = new Metrics(FullSight::of);
        OtlpPush push = new OtlpPush(settings(collector), "0a1b2c3d", metrics::snapshots)) {
      collector.answer(503);
      await("trouble").until(() -> push.trouble().equals(Optional.of("it answered 503")));
      collector.answer(200);
      await("no trouble any more").until(() -> push.trouble().isEmpty());
    }
  }
}
