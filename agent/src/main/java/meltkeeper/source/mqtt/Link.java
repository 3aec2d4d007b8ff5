package meltkeeper.source.mqtt;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import meltkeeper.protocol.Payload;

/**
 * One connection to a broker, for one protocol level: opened once, lost or closed once. A new one
 * is made for each try, so that no state of a broken one can survive; what must survive is kept by
 * the broker.
 */
interface Link {

  /** Connects and subscribes. */
  void open() throws LinkException, InterruptedException;

  /**
   * Publishes at QoS 1, and returns once the broker has it.
   *
   * @param correlation to go with it; MQTT 3.1.1 has no place for it
   */
  void publish(String topic, byte[] payload, boolean retained, Optional<Payload> correlation)
      throws LinkException, InterruptedException;

  /** True while the connection stands. */
  boolean isUp();

  /** Completes with the reason, in words, when the connection is lost. */
  CompletableFuture<String> lost();

  /** Ends the connection, and every thread of it. Nothing is handed over afterwards. */
  void close();

  /** Everything a link is made of. */
  record Order(
      String uri,
      String clientId,
      Duration keptFor,
      Credentials credentials,
      List<String> filters,
      BrokerSocketFactory sockets,
      Delivery delivery,
      Timing timing) {}
}
