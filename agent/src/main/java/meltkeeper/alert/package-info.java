/**
 * Brings alerts from the outbox to those who want them: one thread a route, so that one that hangs
 * holds up neither another nor a reading. Each alert arrives at least once, or is given up where
 * everybody can see it.
 */
@NullMarked
package meltkeeper.alert;

import org.jspecify.annotations.NullMarked;
