/**
 * A recording is lines of JSON, one for each message or line that was received. Here is one such
 * line, there and back.
 */
@NullMarked
package meltkeeper.protocol.recording;

import org.jspecify.annotations.NullMarked;
