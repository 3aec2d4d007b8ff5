/**
 * Parts of a hot end: what they are, where they were fitted and when, how they ended, and the heat
 * that they have seen. Pure.
 */
@NullMarked
package meltkeeper.part;

import org.jspecify.annotations.NullMarked;
