/**
 * What melting plastic takes from a heater: polymers, heat by volume, the duty that a feed needs.
 * Where learning starts from; what a printer shows overrules it. Pure.
 */
@NullMarked
package meltkeeper.jam.heat;

import org.jspecify.annotations.NullMarked;
