/** Listens to printers that talk lines over a TCP port. */
@NullMarked
package meltkeeper.source.tcp;

import org.jspecify.annotations.NullMarked;
