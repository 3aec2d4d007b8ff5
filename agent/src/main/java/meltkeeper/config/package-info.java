/**
 * The configuration: one YAML file read into each room's own settings, or into all of its faults at
 * once, each with its line.
 *
 * <p>{@link meltkeeper.config.Keys} is the one list of keys, with what is allowed and the default;
 * the readers, the advice on a mistyped key and the test of {@code docs/configure.md} share it.
 */
@NullMarked
package meltkeeper.config;

import org.jspecify.annotations.NullMarked;
