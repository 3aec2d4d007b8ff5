/**
 * What is kept: facts by hot end and time, the ledger's accounts, parts with their histories,
 * alerts and how far each has come. An interface, its in-memory form, and the one change that a
 * running agent makes, a {@link meltkeeper.store.Commit}.
 */
@NullMarked
package meltkeeper.store;

import org.jspecify.annotations.NullMarked;
