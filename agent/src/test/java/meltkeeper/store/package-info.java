@NullMarked
package meltkeeper.store;

import org.jspecify.annotations.NullMarked;
