@NullMarked
package meltkeeper.web.guard;

import org.jspecify.annotations.NullMarked;
