/** The daily copies of the store: when one is due, and which are kept. */
@NullMarked
package meltkeeper.cli.copies;

import org.jspecify.annotations.NullMarked;
