/**
 * How well warnings did against jams that are known: leads, false alarms, and the exact bounds of
 * both. The same scoring for recordings of a shop and for simulated printers. Pure.
 */
@NullMarked
package meltkeeper.jam.score;

import org.jspecify.annotations.NullMarked;
