/** Holds the files in {@code dashboards/} to the metrics that they ask for. */
@NullMarked
package meltkeeper.dashboards;

import org.jspecify.annotations.NullMarked;
