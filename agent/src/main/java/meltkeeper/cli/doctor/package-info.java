/** A look over an installation: what is amiss, and what mends it. */
@NullMarked
package meltkeeper.cli.doctor;

import org.jspecify.annotations.NullMarked;
