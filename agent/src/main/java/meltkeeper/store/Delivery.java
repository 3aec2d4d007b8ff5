package meltkeeper.store;

import java.util.Arrays;
import java.util.Optional;

/**
 * How far an alert has come on one route.
 *
 * @param attempts made so far
 * @param nextNanos when it is tried next, while it waits
 * @param detail why the last attempt failed, or empty
 */
public record Delivery(
    String alertId, String route, State state, int attempts, long nextNanos, String detail) {

  /** Whether it has arrived. */
  public enum State {
    WAITING("waiting"),
    DELIVERED("delivered"),
    /** Nothing was to be done any more. */
    CANCELLED("cancelled"),
    /** Given up, or refused for good; nobody tries again. */
    DEAD("dead");

    private final String label;

    State(String label) {
      this.label = label;
    }

    /** As listings and the store write it. */
    public String label() {
      return label;
    }

    /** The state of that label. */
    public static Optional<State> of(String label) {
      return Arrays.stream(values()).filter(state -> state.label.equals(label)).findFirst();
    }
  }

  /** Not tried yet. */
  public static Delivery of(Alert alert, String route) {
    return new Delivery(alert.id(), route, State.WAITING, 0, alert.atNanos(), "");
  }
}
