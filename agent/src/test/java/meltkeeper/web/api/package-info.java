@NullMarked
package meltkeeper.web.api;

import org.jspecify.annotations.NullMarked;
