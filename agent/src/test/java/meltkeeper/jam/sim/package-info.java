/**
 * Printers that exist only in numbers, for judging the jam watch: drawn at random by a seed, with
 * physics that the watch does not assume. Frequencies and sizes are those of common practice (no
 * source), else our own assumption.
 */
@NullMarked
package meltkeeper.jam.sim;

import org.jspecify.annotations.NullMarked;
