package meltkeeper.alert.route;

import java.time.Duration;

/**
 * What is published when a hot end has stalled, once an episode.
 *
 * @param broker by its name in the configuration
 * @param topic with {@code {printer}} where the printer's name stands
 * @param payload with the same
 * @param delay in which acknowledging the alert cancels it
 */
public record JamAction(String broker, String topic, String payload, Duration delay) {

  /** Its name among the routes; no route of a shop may be called so. */
  public static final String NAME = "jam-action";

  static final String PRINTER = "{printer}";
}
