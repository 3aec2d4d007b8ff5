package meltkeeper.demo;

import java.util.OptionalLong;

/**
 * The demo's time: stands still until it is started, and then runs faster than the computer's. It
 * is the wall clock and the steady clock of everything in the demo, printers and agent. Safe for
 * use by several threads.
 */
public final class DemoClock {

  private final long startNanos;
  private final int pace;
  private volatile OptionalLong startedAt = OptionalLong.empty();

  /**
   * @param startNanos what it shows at first, since 1970
   * @param pace simulated seconds in a second, 1 or more
   */
  DemoClock(long startNanos, int pace) {
    this.startNanos = startNanos;
    this.pace = pace;
  }

  /** Sets it going. */
  void start() {
    startedAt = OptionalLong.of(System.nanoTime());
  }

  /** Nanoseconds since 1970, as it shows now. */
  public long nanos() {
    OptionalLong since = startedAt;
    return since.isEmpty()
        ? startNanos
        : startNanos + (System.nanoTime() - since.getAsLong()) * pace;
  }
}
