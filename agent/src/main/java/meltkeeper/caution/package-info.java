/**
 * What calls for care whatever the filament does: a liner above its limit, a hot end that stays hot
 * with nothing to do, a printer that falls silent while hot. Pure: time arrives with the readings.
 */
@NullMarked
package meltkeeper.caution;

import org.jspecify.annotations.NullMarked;
