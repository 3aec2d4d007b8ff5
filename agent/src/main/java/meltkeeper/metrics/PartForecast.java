package meltkeeper.metrics;

import java.util.OptionalDouble;
import meltkeeper.protocol.HotEnd;

/**
 * What lies ahead of a fitted part, as it was last reckoned.
 *
 * @param referenceSeconds its age in reference hours, as seconds
 * @param failsWithin24Hours probability, 0 to 1; empty while the duty is not known
 * @param failsWithin7Days the same
 * @param replaceInSeconds until the advised age; empty when waiting is cheapest
 */
public record PartForecast(
    String id,
    String kind,
    HotEnd hotEnd,
    double referenceSeconds,
    OptionalDouble failsWithin24Hours,
    OptionalDouble failsWithin7Days,
    OptionalDouble replaceInSeconds) {}
