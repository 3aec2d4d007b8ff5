@NullMarked
package meltkeeper.metrics.otlp;

import org.jspecify.annotations.NullMarked;
