package meltkeeper.source;

import java.time.Duration;

/**
 * The times of a printer's connection.
 *
 * @param every the period of asking
 * @param settle how long to say nothing on a new connection
 * @param quiet how long a silence makes the printer count as down
 * @param reopenOnQuiet whether a silent connection is made anew: it may be half open, and making it
 *     anew does the printer no harm
 * @param firstPause before the first new try
 * @param longestPause before any new try
 */
public record PrinterPace(
    Duration every,
    Duration settle,
    Duration quiet,
    boolean reopenOnQuiet,
    Duration firstPause,
    Duration longestPause) {}
