/** Tests of the life model against published tables and against closed forms. */
@NullMarked
package meltkeeper.life;

import org.jspecify.annotations.NullMarked;
