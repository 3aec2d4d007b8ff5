/**
 * Pushes the metrics to a collector by the OpenTelemetry protocol (OTLP 1.x over HTTP, binary
 * protobuf), for a shop whose monitoring cannot come and read them. Off unless configured: none of
 * its classes is loaded then.
 */
@NullMarked
package meltkeeper.metrics.otlp;

import org.jspecify.annotations.NullMarked;
