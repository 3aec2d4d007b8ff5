package meltkeeper.source.mqtt;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import meltkeeper.protocol.Payload;

/**
 * Publishes at one broker at QoS 1. Connects when there is something to publish, stays connected,
 * and connects anew after a failure. For one thread at a time.
 */
public final class MqttPublisher implements AutoCloseable {

  private final BrokerSettings broker;
  private final Timing timing;
  private final String clientId = "meltkeeper-tells-" + UUID.randomUUID();
  private Optional<Link> link = Optional.empty();

  /**
   * @param timeout for each answer of the broker, one second at least
   */
  public MqttPublisher(BrokerSettings broker, Duration timeout) {
    this.broker = broker;
    this.timing =
        new Timing(
            Timing.USUAL.keepAlive(),
            timeout,
            Timing.USUAL.firstPause(),
            Timing.USUAL.longestPause(),
            Timing.USUAL.settled());
  }

  /**
   * Publishes, and returns once the broker has it.
   *
   * @throws IOException saying why it has not, or may not have
   */
  public void publish(String topic, String payload, boolean retained)
      throws IOException, InterruptedException {
    publish(topic, payload, retained, Optional.empty());
  }

  /**
   * The same as an answer.
   *
   * @param correlation that the request bore; MQTT 3.1.1 has no place for it
   */
  public synchronized void publish(
      String topic, String payload, boolean retained, Optional<Payload> correlation)
      throws IOException, InterruptedException {
    boolean done = false;
    try {
      opened().publish(topic, payload.getBytes(StandardCharsets.UTF_8), retained, correlation);
      done = true;
    } catch (LinkException e) {
      throw new IOException(e.getMessage(), e);
    } finally {
      if (!done) {
        close();
      }
    }
  }

  private Link opened() throws LinkException, InterruptedException {
    if (link.isPresent() && link.get().isUp()) {
      return link.get();
    }
    close();
    Link made =
        Links.to(
            broker,
            clientId,
            Duration.ZERO,
            List.of(),
            new Delivery(broker.name(), request -> {}),
            timing);
    link = Optional.of(made);
    made.open();
    return made;
  }

  @Override
  public synchronized void close() {
    link.ifPresent(Link::close);
    link = Optional.empty();
  }
}
