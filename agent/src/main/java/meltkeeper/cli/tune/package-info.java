/**
 * Trying limits of the jam watch on recordings with known jams: the notes read, the answer shown.
 */
@NullMarked
package meltkeeper.cli.tune;

import org.jspecify.annotations.NullMarked;
