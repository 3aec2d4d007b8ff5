package meltkeeper.metrics;

import meltkeeper.part.Exposure;
import meltkeeper.protocol.HotEnd;

/**
 * A part that is on a printer now, as a scrape shows it.
 *
 * @param exposure hot time over its whole life
 * @param filamentMicrometres fed through it over its whole life
 */
public record FittedPart(
    String id, String kind, HotEnd hotEnd, Exposure exposure, long filamentMicrometres) {}
