/**
 * What the shop's monitoring reads: Prometheus text or OpenMetrics, made at each scrape from the
 * live snapshot, beside the process's own meters.
 */
@NullMarked
package meltkeeper.metrics;

import org.jspecify.annotations.NullMarked;
