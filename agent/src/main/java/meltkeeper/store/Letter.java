package meltkeeper.store;

/**
 * An alert that waits on a route.
 *
 * @param isAcknowledged true when somebody has acknowledged its episode
 * @param isOver true when the all-clear of its episode was posted
 */
public record Letter(Alert alert, Delivery delivery, boolean isAcknowledged, boolean isOver) {}
