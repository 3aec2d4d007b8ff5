package meltkeeper.desk;

import java.util.Optional;
import java.util.OptionalLong;
import meltkeeper.part.Because;

/**
 * One part comes off a hot end, and another of its kind goes on.
 *
 * @param part that goes on; empty for a new one, which is made known
 * @param because why the old one comes off
 * @param notThisPart true when the trouble came from elsewhere
 * @param at when, nanoseconds since 1970; empty for now
 */
public record SwapParts(
    String printer,
    int hotEnd,
    String kind,
    Optional<String> part,
    Because because,
    boolean notThisPart,
    OptionalLong at) {}
