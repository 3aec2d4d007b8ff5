package meltkeeper.store;

/**
 * An episode without an all-clear.
 *
 * @param latest alert of it
 * @param hasCalled true when any alert of it was posted to a route
 * @param isAcknowledged true when somebody has seen to it
 */
public record OpenEpisode(Alert latest, boolean hasCalled, boolean isAcknowledged) {}
