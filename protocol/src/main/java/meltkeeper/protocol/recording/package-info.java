/**
 * Recordings: what came off a wire, one JSON line each, to be poured back in byte for byte.
 *
 * <p>The form is laid down in {@link meltkeeper.protocol.recording.RecordingLine}. Reading and
 * writing files is others' work.
 */
@NullMarked
package meltkeeper.protocol.recording;

import org.jspecify.annotations.NullMarked;
