@NullMarked
package meltkeeper.protocol.recording;

import org.jspecify.annotations.NullMarked;
