package meltkeeper.demo;

import meltkeeper.protocol.Arrival;
import meltkeeper.protocol.Origin;
import meltkeeper.protocol.Payload;
import meltkeeper.protocol.Received;

/**
 * A message for a broker.
 *
 * @param nanos when it is published, since 1970
 */
public record Message(long nanos, String topic, String payload) {

  /** The same as it arrives from that broker, at once: what a recording holds. */
  public Received receivedFrom(String broker) {
    return Received.fresh(new Origin.Topic(broker, topic), Payload.of(payload), Arrival.at(nanos));
  }
}
