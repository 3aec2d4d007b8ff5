/**
 * The account of hot time, filament and printing: {@code step(account, reading)} yields the next
 * account and what is to be credited. Pure; all time comes with the readings.
 */
@NullMarked
package meltkeeper.ledger;

import org.jspecify.annotations.NullMarked;
