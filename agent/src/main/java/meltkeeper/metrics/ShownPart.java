package meltkeeper.metrics;

import meltkeeper.part.Exposure;
import meltkeeper.protocol.HotEnd;

/**
 * A part that is on a printer, or was until a short time ago, as a scrape shows it.
 *
 * @param hotEnd where it is, or was
 * @param isFitted whether it still is there
 * @param exposure hot time over its whole life
 * @param filamentMicrometres fed through it over its whole life
 */
public record ShownPart(
    String id,
    String kind,
    HotEnd hotEnd,
    boolean isFitted,
    Exposure exposure,
    long filamentMicrometres) {}
