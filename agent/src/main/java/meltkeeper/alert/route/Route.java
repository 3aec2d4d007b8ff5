package meltkeeper.alert.route;

import java.util.List;

/** A way to somebody. For one thread; only {@link #close} may come from another. */
public interface Route extends AutoCloseable {

  /**
   * Hands a message over, and returns once the other side has taken it. Ends in bounded time.
   *
   * @throws UndeliveredException when it was not taken, or nobody knows
   */
  void deliver(Message message) throws UndeliveredException, InterruptedException;

  /** True when the other side reads several messages better as one. */
  default boolean joins() {
    return false;
  }

  /**
   * Hands several messages over as one, for a route that joins them.
   *
   * @param messages at least one
   * @throws UndeliveredException when not all were taken, or nobody knows
   */
  default void deliver(List<Message> messages) throws UndeliveredException, InterruptedException {
    for (Message message : messages) {
      deliver(message);
    }
  }

  @Override
  default void close() {}
}
