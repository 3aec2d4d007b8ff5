package meltkeeper.alert;

import java.util.Optional;

/**
 * How a route stands.
 *
 * @param delivered since the start
 * @param failed tries since the start
 * @param dead given up since the start
 * @param waiting at the last look, seconds ago
 * @param isFull true while as many wait as may: the oldest are given up
 * @param trouble why the last try failed; empty while all is well
 */
public record RouteState(
    String name,
    long delivered,
    long failed,
    long dead,
    int waiting,
    boolean isFull,
    Optional<String> trouble) {}
