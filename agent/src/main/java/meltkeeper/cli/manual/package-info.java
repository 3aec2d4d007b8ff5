/** The manual page, made of the command definitions, so that it cannot lag behind them. */
@NullMarked
package meltkeeper.cli.manual;

import org.jspecify.annotations.NullMarked;
