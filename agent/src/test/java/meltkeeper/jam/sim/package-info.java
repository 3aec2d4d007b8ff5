/**
 * Printers that exist only in numbers, for judging the jam watch: drawn at random by a seed, with
 * physics that the watch does not assume. Frequencies and sizes are those of the jam reference
 * (sections 2 to 5), else our own assumption.
 */
@NullMarked
package meltkeeper.jam.sim;

import org.jspecify.annotations.NullMarked;
