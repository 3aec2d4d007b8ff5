@NullMarked
package meltkeeper.pipeline;

import org.jspecify.annotations.NullMarked;
