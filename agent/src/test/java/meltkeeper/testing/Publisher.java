package meltkeeper.testing;

import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.util.UUID;
import org.eclipse.paho.client.mqttv3.MqttClient;
import org.eclipse.paho.client.mqttv3.MqttConnectOptions;
import org.eclipse.paho.client.mqttv3.MqttException;
import org.eclipse.paho.client.mqttv3.persist.MemoryPersistence;

/** A printer's side of a broker: publishes, and waits until the broker has it. */
public final class Publisher implements AutoCloseable {

  private static final int MAX_IN_FLIGHT = 1000;

  private final MqttClient client;

  public Publisher(URI broker) throws MqttException {
    this(broker, new MqttConnectOptions());
  }

  public Publisher(URI broker, MqttConnectOptions options) throws MqttException {
    client =
        new MqttClient(broker.toString(), "test-" + UUID.randomUUID(), new MemoryPersistence());
    options.setMaxInflight(MAX_IN_FLIGHT);
    client.connect(options);
  }

  /** Publishes at QoS 1. */
  public void publish(String topic, String payload) throws MqttException {
    publish(topic, payload, false);
  }

  /** Publishes at QoS 1. */
  public void publish(String topic, String payload, boolean retained) throws MqttException {
    client.publish(topic, payload.getBytes(StandardCharsets.UTF_8), 1, retained);
  }

  @Override
  public void close() throws MqttException {
    client.disconnect();
    client.close();
  }
}
