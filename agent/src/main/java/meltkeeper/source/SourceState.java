package meltkeeper.source;

/**
 * How a source is now.
 *
 * @param reason in words for a person: to whom it is connected, or what stands in the way
 */
public record SourceState(Phase phase, String reason) {

  /** The three ways a source can be. */
  public enum Phase {
    /** Connected; whatever is sent arrives. */
    UP,
    /** Being connected, for the first time or again. */
    CONNECTING,
    /** Not connected: it waits before the next try, or was closed. */
    DOWN
  }

  public static SourceState up(String reason) {
    return new SourceState(Phase.UP, reason);
  }

  public static SourceState connecting(String reason) {
    return new SourceState(Phase.CONNECTING, reason);
  }

  public static SourceState down(String reason) {
    return new SourceState(Phase.DOWN, reason);
  }

  public boolean isUp() {
    return phase == Phase.UP;
  }
}
