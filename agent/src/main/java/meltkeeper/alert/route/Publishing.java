package meltkeeper.alert.route;

import java.time.Duration;

/** Publishes at a broker; plugged in from outside, for this room knows no broker. */
public interface Publishing extends AutoCloseable {

  /**
   * Publishes, and returns once the broker has it. Ends in bounded time.
   *
   * @throws UndeliveredException when the broker did not take it, or nobody knows
   */
  void publish(String topic, String payload, boolean retained)
      throws UndeliveredException, InterruptedException;

  @Override
  void close();

  /** Makes connections to brokers. */
  interface Maker {

    /**
     * A connection, not opened yet.
     *
     * @param broker by its name in the configuration
     * @param timeout for each answer of the broker
     */
    Publishing at(String broker, Duration timeout);
  }
}
