@NullMarked
package meltkeeper.cli.tune;

import org.jspecify.annotations.NullMarked;
