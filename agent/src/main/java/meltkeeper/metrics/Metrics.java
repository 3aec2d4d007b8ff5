package meltkeeper.metrics;

import io.micrometer.core.instrument.binder.jvm.JvmGcMetrics;
import io.micrometer.core.instrument.binder.jvm.JvmMemoryMetrics;
import io.micrometer.core.instrument.binder.jvm.JvmThreadMetrics;
import io.micrometer.core.instrument.binder.system.ProcessorMetrics;
import io.micrometer.core.instrument.binder.system.UptimeMetrics;
import io.micrometer.prometheusmetrics.PrometheusConfig;
import io.micrometer.prometheusmetrics.PrometheusMeterRegistry;
import java.util.function.Supplier;

/** The registry that a scrape reads. Safe for any thread. */
public final class Metrics implements AutoCloseable {

  /** The content type of {@link #scrape}: Prometheus text. */
  public static final String CONTENT_TYPE = "text/plain; version=0.0.4; charset=utf-8";

  private final PrometheusMeterRegistry registry =
      new PrometheusMeterRegistry(PrometheusConfig.DEFAULT);
  private final JvmGcMetrics collections = new JvmGcMetrics();

  /**
   * A registry with the process's own meters and the shop's series.
   *
   * @param sight asked once a scrape
   */
  public Metrics(Supplier<Sight> sight) {
    new JvmMemoryMetrics().bindTo(registry);
    new JvmThreadMetrics().bindTo(registry);
    collections.bindTo(registry);
    new ProcessorMetrics().bindTo(registry);
    new UptimeMetrics().bindTo(registry);
    registry.getPrometheusRegistry().register(new ShopCollector(sight));
  }

  /** Everything as Prometheus text. */
  public String scrape() {
    return registry.scrape();
  }

  @Override
  public void close() {
    collections.close();
    registry.close();
  }
}
