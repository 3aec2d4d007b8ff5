package meltkeeper.source.mqtt;

import java.time.Duration;

/**
 * The times of one connection.
 *
 * @param keepAlive whole seconds; a broker silent for up to twice this is given up
 * @param answer how long to wait for the answer to a connect or subscribe
 * @param firstPause before the first new try
 * @param longestPause before any new try
 * @param settled after being up for so long, the pauses begin anew
 */
record Timing(
    Duration keepAlive,
    Duration answer,
    Duration firstPause,
    Duration longestPause,
    Duration settled) {

  static final Timing USUAL =
      new Timing(
          Duration.ofSeconds(30),
          Duration.ofSeconds(15),
          Duration.ofSeconds(1),
          Duration.ofMinutes(1),
          Duration.ofSeconds(30));
}
