@NullMarked
package meltkeeper.cli;

import org.jspecify.annotations.NullMarked;
