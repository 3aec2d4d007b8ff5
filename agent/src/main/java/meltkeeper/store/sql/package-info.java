/**
 * Stores in an SQL database: today an SQLite file. What only SQLite says stands in {@code
 * SqliteFile} and {@code Trouble} and in its migrations; all else is SQL that other databases
 * understand as well.
 */
@NullMarked
package meltkeeper.store.sql;

import org.jspecify.annotations.NullMarked;
