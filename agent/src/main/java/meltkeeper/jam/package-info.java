/**
 * The jam watch: readings in, level and evidence out. Pure, in constant memory for each hot end;
 * all time comes with the readings.
 */
@NullMarked
package meltkeeper.jam;

import org.jspecify.annotations.NullMarked;
