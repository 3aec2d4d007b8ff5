package meltkeeper.metrics;

import io.prometheus.metrics.model.snapshots.CounterSnapshot;
import io.prometheus.metrics.model.snapshots.CounterSnapshot.CounterDataPointSnapshot;
import io.prometheus.metrics.model.snapshots.GaugeSnapshot;
import io.prometheus.metrics.model.snapshots.GaugeSnapshot.GaugeDataPointSnapshot;
import io.prometheus.metrics.model.snapshots.Labels;
import io.prometheus.metrics.model.snapshots.MetricSnapshot;
import java.util.List;
import java.util.function.BiConsumer;

/**
 * One metric of the shop.
 *
 * @param name without the prefix and, for a counter, without {@code _total}
 * @param labels names of its labels
 * @param help for a stranger: one line
 * @param values what the sight gives
 */
record ShopMetric(
    String name,
    Form form,
    List<String> labels,
    String help,
    BiConsumer<Sight, ShopMetric.Out> values) {

  /** What all names begin with. */
  static final String PREFIX = "meltkeeper_";

  ShopMetric {
    labels = List.copyOf(labels);
  }

  /** Whether a series only grows. */
  enum Form {
    COUNTER,
    GAUGE
  }

  /** Takes a metric's values. */
  interface Out {

    /** Takes one value with those of its labels, in the order of their names. */
    void add(double value, String... labelValues);
  }

  static ShopMetric counter(
      String name, List<String> labels, String help, BiConsumer<Sight, Out> values) {
    return new ShopMetric(name, Form.COUNTER, labels, help, values);
  }

  static ShopMetric gauge(
      String name, List<String> labels, String help, BiConsumer<Sight, Out> values) {
    return new ShopMetric(name, Form.GAUGE, labels, help, values);
  }

  /** The name as queries write it. */
  String fullName() {
    return PREFIX + name + (form == Form.COUNTER ? "_total" : "");
  }

  MetricSnapshot snapshot(Sight sight) {
    String[] names = labels.toArray(String[]::new);
    if (form == Form.COUNTER) {
      CounterSnapshot.Builder builder = CounterSnapshot.builder().name(PREFIX + name).help(help);
      values.accept(
          sight,
          (value, labelValues) ->
              builder.dataPoint(
                  CounterDataPointSnapshot.builder()
                      .value(value)
                      .labels(Labels.of(names, labelValues))
                      .build()));
      return builder.build();
    }
    GaugeSnapshot.Builder builder = GaugeSnapshot.builder().name(PREFIX + name).help(help);
    values.accept(
        sight,
        (value, labelValues) ->
            builder.dataPoint(
                GaugeDataPointSnapshot.builder()
                    .value(value)
                    .labels(Labels.of(names, labelValues))
                    .build()));
    return builder.build();
  }
}
