package meltkeeper.alert;

import java.util.Optional;

/**
 * How a route stands.
 *
 * @param delivered since the start
 * @param failed tries since the start
 * @param dead given up since the start
 * @param waiting now, at most a few hundred are counted
 * @param trouble why the last try failed; empty while all is well
 */
public record RouteState(
    String name, long delivered, long failed, long dead, int waiting, Optional<String> trouble) {}
