package meltkeeper.store;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * One thing to tell of an episode.
 *
 * @param number counts the alerts of one phase of an episode from 0
 * @param atNanos of the reading or look that caused it
 * @param text what is the matter and what to do, in plain words, for a person who is elsewhere
 */
public record Alert(Episode episode, Phase phase, int number, long atNanos, String text) {

  /** Where in its episode an alert stands. */
  public enum Phase {
    BEGAN("began"),
    REMINDER("reminder"),
    ALL_CLEAR("all-clear");

    private final String label;

    Phase(String label) {
      this.label = label;
    }

    /** As messages and the store write it. */
    public String label() {
      return label;
    }

    /** The phase of that label. */
    public static Optional<Phase> of(String label) {
      return Arrays.stream(values()).filter(phase -> phase.label.equals(label)).findFirst();
    }
  }

  public Alert {
    if (number < 0 || text.isBlank()) {
      throw new IllegalArgumentException(
          "an alert has a number from 0 and a text, not " + number + " and \"" + text + "\"");
    }
  }

  /**
   * Twelve hexadecimal digits by which a receiver knows a second copy. They follow from what is
   * told, so that an alert lost with an uncommitted reading comes back under the same id.
   */
  public String id() {
    return Ids.of(episode.key() + " " + phase.label() + " " + number);
  }

  public AlertTopic topic() {
    return episode.topic();
  }

  public Subject subject() {
    return episode.subject();
  }

  /** What to mind when going there; nothing once it is over. */
  public List<String> cautions() {
    return phase == Phase.ALL_CLEAR ? List.of() : topic().cautions();
  }
}
