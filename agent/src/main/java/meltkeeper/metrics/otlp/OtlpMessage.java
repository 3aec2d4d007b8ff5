package meltkeeper.metrics.otlp;

import io.opentelemetry.proto.collector.metrics.v1.ExportMetricsServiceRequest;
import io.opentelemetry.proto.common.v1.AnyValue;
import io.opentelemetry.proto.common.v1.InstrumentationScope;
import io.opentelemetry.proto.common.v1.KeyValue;
import io.opentelemetry.proto.metrics.v1.AggregationTemporality;
import io.opentelemetry.proto.metrics.v1.Gauge;
import io.opentelemetry.proto.metrics.v1.Metric;
import io.opentelemetry.proto.metrics.v1.NumberDataPoint;
import io.opentelemetry.proto.metrics.v1.ResourceMetrics;
import io.opentelemetry.proto.metrics.v1.ScopeMetrics;
import io.opentelemetry.proto.metrics.v1.Sum;
import io.opentelemetry.proto.metrics.v1.Summary;
import io.opentelemetry.proto.metrics.v1.SummaryDataPoint;
import io.opentelemetry.proto.resource.v1.Resource;
import io.prometheus.metrics.model.snapshots.CounterSnapshot;
import io.prometheus.metrics.model.snapshots.GaugeSnapshot;
import io.prometheus.metrics.model.snapshots.Label;
import io.prometheus.metrics.model.snapshots.Labels;
import io.prometheus.metrics.model.snapshots.MetricSnapshot;
import io.prometheus.metrics.model.snapshots.MetricSnapshots;
import io.prometheus.metrics.model.snapshots.SummarySnapshot;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/**
 * Metrics as an OTLP request: counters as cumulative monotonic sums, the rest as it is. Names are
 * those of {@code /metrics} without {@code _total}; the unit that a name ends in stands beside it,
 * written as UCUM has it.
 *
 * @param instance tells this agent from others
 * @param startNanos since when the counters count, nanoseconds since 1970
 * @param nowNanos of the values, likewise
 */
record OtlpMessage(String instance, long startNanos, long nowNanos) {

  private static final Map<String, String> UNITS =
      Map.of("_seconds", "s", "_meters", "m", "_celsius", "Cel", "_bytes", "By");

  ExportMetricsServiceRequest of(MetricSnapshots snapshots) {
    ScopeMetrics.Builder scope =
        ScopeMetrics.newBuilder().setScope(InstrumentationScope.newBuilder().setName("meltkeeper"));
    for (MetricSnapshot snapshot : snapshots) {
      scope.addMetrics(metric(snapshot));
    }
    return ExportMetricsServiceRequest.newBuilder()
        .addResourceMetrics(
            ResourceMetrics.newBuilder()
                .setResource(
                    Resource.newBuilder()
                        .addAttributes(attribute("service.name", "meltkeeper"))
                        .addAttributes(attribute("service.instance.id", instance)))
                .addScopeMetrics(scope))
        .build();
  }

  private Metric metric(MetricSnapshot snapshot) {
    String name = snapshot.getMetadata().getPrometheusName();
    Metric.Builder metric =
        Metric.newBuilder()
            .setName(name)
            .setDescription(String.valueOf(snapshot.getMetadata().getHelp()));
    UNITS.forEach(
        (ending, unit) -> {
          if (name.endsWith(ending)) {
            metric.setUnit(unit);
          }
        });
    if (snapshot instanceof CounterSnapshot counter) {
      return metric.setSum(sum(counter)).build();
    }
    if (snapshot instanceof GaugeSnapshot gauge) {
      return metric.setGauge(gauge(gauge)).build();
    }
    if (snapshot instanceof SummarySnapshot summary) {
      return metric.setSummary(summary(summary)).build();
    }
    throw new IllegalStateException(
        name + " is a " + snapshot.getClass().getSimpleName() + ", which no metric of ours is");
  }

  private Sum sum(CounterSnapshot counter) {
    Sum.Builder sum =
        Sum.newBuilder()
            .setIsMonotonic(true)
            .setAggregationTemporality(AggregationTemporality.AGGREGATION_TEMPORALITY_CUMULATIVE);
    counter
        .getDataPoints()
        .forEach(point -> sum.addDataPoints(number(point.getLabels(), point.getValue())));
    return sum.build();
  }

  private Gauge gauge(GaugeSnapshot snapshot) {
    Gauge.Builder gauge = Gauge.newBuilder();
    snapshot
        .getDataPoints()
        .forEach(point -> gauge.addDataPoints(number(point.getLabels(), point.getValue())));
    return gauge.build();
  }

  private NumberDataPoint number(Labels labels, double value) {
    return NumberDataPoint.newBuilder()
        .addAllAttributes(attributes(labels))
        .setStartTimeUnixNano(startNanos)
        .setTimeUnixNano(nowNanos)
        .setAsDouble(value)
        .build();
  }

  private Summary summary(SummarySnapshot snapshot) {
    Summary.Builder summary = Summary.newBuilder();
    snapshot
        .getDataPoints()
        .forEach(
            point ->
                summary.addDataPoints(
                    SummaryDataPoint.newBuilder()
                        .addAllAttributes(attributes(point.getLabels()))
                        .setStartTimeUnixNano(startNanos)
                        .setTimeUnixNano(nowNanos)
                        .setCount(point.getCount())
                        .setSum(point.getSum())));
    return summary.build();
  }

  private static List<KeyValue> attributes(Labels labels) {
    List<KeyValue> attributes = new ArrayList<>();
    for (Label label : labels) {
      attributes.add(attribute(label.getName(), label.getValue()));
    }
    return attributes;
  }

  private static KeyValue attribute(String name, String value) {
    return KeyValue.newBuilder()
        .setKey(name)
        .setValue(AnyValue.newBuilder().setStringValue(value))
        .build();
  }
}
