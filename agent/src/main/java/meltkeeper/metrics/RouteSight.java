package meltkeeper.metrics;

/**
 * What a route of alerts has done since the start.
 *
 * @param failed tries
 * @param dead alerts that were given up
 * @param waiting alerts now
 * @param isFull true while as many wait as may
 * @param isUp false while the last try failed
 */
public record RouteSight(
    String name,
    long delivered,
    long failed,
    long dead,
    int waiting,
    boolean isFull,
    boolean isUp) {}
