/** {@code main} and the commands; the one place that knows every room and joins them. */
@NullMarked
package meltkeeper.cli;

import org.jspecify.annotations.NullMarked;
