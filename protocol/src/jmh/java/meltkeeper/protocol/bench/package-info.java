/** How fast the readers are, each beside a plain way to do the same. */
@NullMarked
package meltkeeper.protocol.bench;

import org.jspecify.annotations.NullMarked;
