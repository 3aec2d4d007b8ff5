/** How fast the agent's path is, beside something that does as little as can be. */
@NullMarked
package meltkeeper.bench;

import org.jspecify.annotations.NullMarked;
