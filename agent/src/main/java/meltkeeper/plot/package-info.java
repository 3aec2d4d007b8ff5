/**
 * Plots as inline SVG, drawn on the server: records of numbers and words in, one {@code <svg>}
 * element out. {@link meltkeeper.plot.LinePlot} draws curves, {@link meltkeeper.plot.BarPlot} bars,
 * {@link meltkeeper.plot.Gauge} one value against its limit in a table cell. Pure, and knows
 * nothing of printers or parts.
 *
 * <p>A page takes {@link meltkeeper.plot.PlotStyle#CSS} once and any number of plots. They hold no
 * script, no {@code style} attribute and no id, so they pass a strict Content-Security-Policy and
 * never collide; without the stylesheet they still read, in the colour of the text around them.
 * They shrink to the width at hand and are laid out to be read at 320 pixels. Every text is escaped
 * here; callers hand over plain text. What is told by colour is told by shape, dash or hatching
 * too.
 *
 * <p>Inputs check themselves: an {@link java.lang.IllegalArgumentException} names the value found
 * and what is allowed. Everything is immutable and may be shared between threads.
 */
@NullMarked
package meltkeeper.plot;

import org.jspecify.annotations.NullMarked;
