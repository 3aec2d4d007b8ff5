/** Tests of the plots: every drawing is read back by the JDK's XML parser and measured. */
@NullMarked
package meltkeeper.plot;

import org.jspecify.annotations.NullMarked;
