package meltkeeper.alert.route;

import meltkeeper.store.Alert;
import meltkeeper.store.AlertTopic;
import meltkeeper.store.Episode;
import meltkeeper.store.Subject;

/**
 * An alert on its way.
 *
 * @param isSample true for a trial of the route: nothing is the matter
 */
public record Message(Alert alert, boolean isSample) {

  /** A trial of a route. */
  public static Message sample(String route, long nowNanos) {
    Episode episode = new Episode(AlertTopic.STORE_TROUBLE, new Subject.OfAgent(), nowNanos);
    String text = "This is a test of the route " + route + ". Nothing is the matter.";
    return new Message(new Alert(episode, Alert.Phase.BEGAN, 0, nowNanos, text), true);
  }
}
