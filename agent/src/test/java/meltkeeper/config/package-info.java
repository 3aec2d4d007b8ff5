@NullMarked
package meltkeeper.config;

import org.jspecify.annotations.NullMarked;
