@NullMarked
package meltkeeper.web.page;

import org.jspecify.annotations.NullMarked;
