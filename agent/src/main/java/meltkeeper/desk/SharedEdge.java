package meltkeeper.desk;

import java.time.Instant;

/**
 * A moment at which a part came or went within a stretch that the store keeps as one sum, so that
 * the sum was shared in proportion to time.
 *
 * @param from the beginning of that stretch
 * @param until its end
 */
public record SharedEdge(Instant at, Instant from, Instant until) {}
