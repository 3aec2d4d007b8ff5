package meltkeeper.metrics;

import io.prometheus.metrics.model.registry.MultiCollector;
import io.prometheus.metrics.model.snapshots.MetricSnapshots;
import java.util.function.Supplier;

/** Makes the shop's series out of a {@link Sight} at each scrape; holds no meters. */
final class ShopCollector implements MultiCollector {

  private final Supplier<Sight> sight;

  ShopCollector(Supplier<Sight> sight) {
    this.sight = sight;
  }

  @Override
  public MetricSnapshots collect() {
    Sight now = sight.get();
    MetricSnapshots.Builder all = MetricSnapshots.builder();
    for (ShopMetric metric : ShopMetrics.ALL) {
      all.metricSnapshot(metric.snapshot(now));
    }
    return all.build();
  }
}
