package meltkeeper.alert.route;

/** A way to somebody. For one thread; only {@link #close} may come from another. */
public interface Route extends AutoCloseable {

  /**
   * Hands a message over, and returns once the other side has taken it. Ends in bounded time.
   *
   * @throws UndeliveredException when it was not taken, or nobody knows
   */
  void deliver(Message message) throws UndeliveredException, InterruptedException;

  @Override
  default void close() {}
}
