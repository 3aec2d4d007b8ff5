/** Listens to printers on a serial port. */
@NullMarked
package meltkeeper.source.serial;

import org.jspecify.annotations.NullMarked;
