@NullMarked
package meltkeeper.metrics;

import org.jspecify.annotations.NullMarked;
