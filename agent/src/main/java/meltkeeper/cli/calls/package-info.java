/**
 * Calls that need an outlook, and the look at the disk: on a thread of their own, beside the path
 * of the readings.
 */
@NullMarked
package meltkeeper.cli.calls;

import org.jspecify.annotations.NullMarked;
