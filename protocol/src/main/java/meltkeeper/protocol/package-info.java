/**
 * What every room speaks of: bytes as they were {@link meltkeeper.protocol.Received received}, the
 * {@link meltkeeper.protocol.Reading readings} made of them, and what could not be read.
 *
 * <p>Time is a {@code long} of nanoseconds since 1970-01-01T00:00:00Z throughout, good until 2262.
 */
@NullMarked
package meltkeeper.protocol;

import org.jspecify.annotations.NullMarked;
