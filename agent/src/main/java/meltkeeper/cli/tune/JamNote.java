package meltkeeper.cli.tune;

import java.util.OptionalLong;
import meltkeeper.protocol.HotEnd;

/**
 * A jam as somebody noted it. Nanoseconds since 1970.
 *
 * @param place file and line
 * @param toldStalled the time of the stall as it is written
 * @param began when it began, where somebody knows
 * @param stalledNanos when it stalled or was found
 */
public record JamNote(
    String place,
    HotEnd hotEnd,
    OptionalLong began,
    long stalledNanos,
    String toldStalled,
    String note) {}
