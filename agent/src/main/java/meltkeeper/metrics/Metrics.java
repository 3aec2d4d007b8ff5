package meltkeeper.metrics;

import io.micrometer.core.instrument.binder.jvm.JvmGcMetrics;
import io.micrometer.core.instrument.binder.jvm.JvmMemoryMetrics;
import io.micrometer.core.instrument.binder.jvm.JvmThreadMetrics;
import io.micrometer.core.instrument.binder.system.ProcessorMetrics;
import io.micrometer.core.instrument.binder.system.UptimeMetrics;
import io.micrometer.core.instrument.config.MeterFilter;
import io.micrometer.prometheusmetrics.PrometheusConfig;
import io.micrometer.prometheusmetrics.PrometheusMeterRegistry;
import io.prometheus.metrics.model.snapshots.MetricSnapshots;
import java.util.Set;
import java.util.function.Supplier;

/** The registry that a scrape reads. Safe for any thread. */
public final class Metrics implements AutoCloseable {

  /** Meters whose names break Prometheus' own rules; {@code process_cpu_usage} says enough. */
  private static final Set<String> ILL_NAMED = Set.of("process.cpu.time", "system.cpu.count");

  private final PrometheusMeterRegistry registry =
      new PrometheusMeterRegistry(PrometheusConfig.DEFAULT);
  private final JvmGcMetrics collections = new JvmGcMetrics();

  /**
   * A registry with the process's own meters and the shop's series.
   *
   * @param sight asked once a scrape
   */
  public Metrics(Supplier<Sight> sight) {
    registry.config().meterFilter(MeterFilter.deny(meter -> ILL_NAMED.contains(meter.getName())));
    new JvmMemoryMetrics().bindTo(registry);
    new JvmThreadMetrics().bindTo(registry);
    collections.bindTo(registry);
    new ProcessorMetrics().bindTo(registry);
    new UptimeMetrics().bindTo(registry);
    registry.getPrometheusRegistry().register(new ShopCollector(sight));
  }

  /** Everything, in that format. */
  public String scrape(Exposition format) {
    return registry.scrape(format.contentType());
  }

  /** Everything, for a push. */
  public MetricSnapshots snapshots() {
    return registry.getPrometheusRegistry().scrape();
  }

  @Override
  public void close() {
    collections.close();
    registry.close();
  }
}
