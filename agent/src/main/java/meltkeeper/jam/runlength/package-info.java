/**
 * How long a one-sided CUSUM runs before it alarms: exact run lengths, closed forms, and the limit
 * that follows from a wanted interval between false alarms. Standardised, independent, normal
 * samples throughout; their dependence is for the caller to remove. Pure.
 */
@NullMarked
package meltkeeper.jam.runlength;

import org.jspecify.annotations.NullMarked;
