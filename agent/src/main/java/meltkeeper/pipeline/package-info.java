/**
 * The one writer: what was received is decoded, credited and committed here, and nowhere else; what
 * stands now is published as an immutable {@link meltkeeper.pipeline.Live}.
 */
@NullMarked
package meltkeeper.pipeline;

import org.jspecify.annotations.NullMarked;
