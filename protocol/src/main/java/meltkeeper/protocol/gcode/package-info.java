/**
 * The lines exchanged with a printer over a wire, or kept in a file: what a printer {@link
 * meltkeeper.protocol.gcode.Report reports}, what it is {@link
 * meltkeeper.protocol.gcode.CommandLine commanded}, and the few {@link
 * meltkeeper.protocol.gcode.Request requests} that we may send.
 *
 * <p>Command lines follow RS274/NGC (Kramer, Proctor, Messina 2000, NISTIR 6556) as far as filament
 * printers speak it; report lines follow the RepRap dialect (common practice, no source).
 */
@NullMarked
package meltkeeper.protocol.gcode;

import org.jspecify.annotations.NullMarked;
