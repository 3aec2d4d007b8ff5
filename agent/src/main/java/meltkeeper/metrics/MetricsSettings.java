package meltkeeper.metrics;

import java.time.Duration;
import java.util.Optional;
import meltkeeper.metrics.otlp.OtlpSettings;

/**
 * What the shop's monitoring is given.
 *
 * @param keepRemoved so long the series of a part stay after it was taken off
 * @param otlp where they are pushed to; empty when they are only read
 */
public record MetricsSettings(Duration keepRemoved, Optional<OtlpSettings> otlp) {}
