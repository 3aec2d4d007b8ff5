@NullMarked
package meltkeeper.store.sql;

import org.jspecify.annotations.NullMarked;
