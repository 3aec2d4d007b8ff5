package meltkeeper.pipeline;

import java.util.OptionalDouble;

/**
 * One minute of a hot end.
 *
 * @param fromNanos its beginning, nanoseconds since 1970
 * @param celsius mean of its temperatures; empty when none was told
 * @param targetCelsius the last one asked for
 * @param commandedMicrometres filament asked for in it
 * @param measuredMicrometres filament seen to move in it
 * @param evidence the most that any detector had at its end, 1 warns
 */
public record Minute(
    long fromNanos,
    OptionalDouble celsius,
    OptionalDouble targetCelsius,
    long commandedMicrometres,
    long measuredMicrometres,
    double evidence) {}
