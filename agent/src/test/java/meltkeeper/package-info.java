@NullMarked
package meltkeeper;

import org.jspecify.annotations.NullMarked;
