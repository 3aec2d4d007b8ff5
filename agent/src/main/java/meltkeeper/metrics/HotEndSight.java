package meltkeeper.metrics;

import java.util.OptionalDouble;
import java.util.OptionalLong;
import meltkeeper.pipeline.HotEndLive;

/**
 * A hot end as a scrape shows it.
 *
 * @param silentNanos since its latest reading; empty when none came since the start
 * @param hotAboveCelsius hot means above it
 * @param limitCelsius the least limit of the parts that are fitted
 */
public record HotEndSight(
    HotEndLive live,
    OptionalLong silentNanos,
    double hotAboveCelsius,
    OptionalDouble limitCelsius) {}
