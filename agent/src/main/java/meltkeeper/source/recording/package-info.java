/** Reads recordings as if they happened now, and writes what the other sources receive. */
@NullMarked
package meltkeeper.source.recording;

import org.jspecify.annotations.NullMarked;
