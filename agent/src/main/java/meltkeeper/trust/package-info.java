/** Whom we believe: one rule for every encrypted connection. */
@NullMarked
package meltkeeper.trust;

import org.jspecify.annotations.NullMarked;
