package meltkeeper.source.mqtt;

import java.util.Optional;
import meltkeeper.protocol.Payload;

/**
 * A message as a broker hands it over.
 *
 * @param answerTo the topic on which its sender waits for an answer (MQTT 5.0, 3.3.2.3.5)
 * @param correlation what the answer must bear, so that its sender knows it
 */
public record MqttRequest(
    String topic,
    Payload payload,
    boolean retained,
    Optional<String> answerTo,
    Optional<Payload> correlation) {

  static MqttRequest plain(String topic, byte[] payload, boolean retained) {
    return new MqttRequest(
        topic, Payload.of(payload), retained, Optional.empty(), Optional.empty());
  }

  /** Takes requests in order, one at a time. */
  public interface Taker {
    void take(MqttRequest request) throws InterruptedException;
  }
}
