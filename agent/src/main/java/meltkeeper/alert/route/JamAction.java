package meltkeeper.alert.route;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import meltkeeper.protocol.gcode.Request;

/**
 * What is done when a hot end has stalled, once an episode. A printer on a line of its own is sent
 * the lines, if there are any; for every other the message is published, if there is one.
 *
 * @param delay in which acknowledging the alert cancels it
 */
public record JamAction(Optional<Note> message, List<Request.Ordered> lines, Duration delay) {

  /** Its name among the routes; no route of a shop may be called so. */
  public static final String NAME = "jam-action";

  static final String PRINTER = "{printer}";

  public JamAction {
    lines = List.copyOf(lines);
    if (message.isEmpty() && lines.isEmpty()) {
      throw new IllegalArgumentException("a jam action publishes a message or sends lines");
    }
  }

  /**
   * A message at a broker.
   *
   * @param broker by its name in the configuration
   * @param topic with {@code {printer}} where the printer's name stands
   * @param payload with the same
   */
  public record Note(String broker, String topic, String payload) {}

  /**
   * True when something is done about a printer.
   *
   * @param hasLine true for one on a line of its own
   */
  public boolean reaches(boolean hasLine) {
    return message.isPresent() || (hasLine && !lines.isEmpty());
  }
}
