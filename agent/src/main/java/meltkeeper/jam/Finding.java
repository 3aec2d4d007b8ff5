package meltkeeper.jam;

import java.util.Optional;
import meltkeeper.protocol.HotEnd;

/**
 * A change of level, and why.
 *
 * @param atNanos time of the reading that settled it
 * @param detector the one that speaks loudest
 * @param evidence its evidence as a fraction of its limit
 * @param because the reason in plain words
 */
public record Finding(
    HotEnd hotEnd,
    long atNanos,
    Level level,
    Detector detector,
    double evidence,
    String because,
    Optional<MinutesToStall> minutesToStall,
    Optional<Cause> cause) {}
