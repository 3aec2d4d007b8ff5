package meltkeeper.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import meltkeeper.config.ConfigReader;
import meltkeeper.config.Settings;
import meltkeeper.store.AlertEntry;
import meltkeeper.store.AlertTopic;
import meltkeeper.store.Store;
import meltkeeper.store.sql.Stores;
import meltkeeper.testing.Mosquitto;
import meltkeeper.testing.Publisher;
import meltkeeper.testing.ThreadLeaks;
import org.eclipse.paho.mqttv5.client.IMqttMessageListener;
import org.eclipse.paho.mqttv5.client.MqttClient;
import org.eclipse.paho.mqttv5.client.persist.MemoryPersistence;
import org.eclipse.paho.mqttv5.common.MqttMessage;
import org.eclipse.paho.mqttv5.common.MqttSubscription;
import org.eclipse.paho.mqttv5.common.packet.MqttProperties;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;

/** A whole agent between a real broker's printers, buttons and listeners. */
@ExtendWith(ThreadLeaks.class)
final class CallsOverBrokerTest {

  @TempDir private Path folder;

  /** Correlation data of the button that is pressed until the agent listens. */
  private static final String FIRST = "first";

  /** One answer or event, {@code topic correlation payload}. */
  private final List<String> heard = new CopyOnWriteArrayList<>();

  private final List<String> refusals = new CopyOnWriteArrayList<>();

  private Settings settings(Mosquitto broker) throws Exception {
    Path file = folder.resolve("meltkeeper.yaml");
    Files.writeString(
        file,
        """
        store: jdbc:sqlite:shop.db
        http: { listen: 127.0.0.1:0 }
        brokers:
          shop: { url: %s }
        mappings:
          status-json:
            - topic: plant/{printer}/status
              time: { at: /at, format: iso }
              read: { hot-end-temperature: /now }
        printers:
          heron: { from: { broker: shop, mapping: status-json } }
        alerts:
          routes:
            board: { mqtt: shop, topics: [ too-hot ] }
        commands: { broker: shop }
        """
            .formatted(broker.url()));
    return ConfigReader.read(file)
        .fold(
            valid -> valid,
            faults -> {
              throw new AssertionError(faults);
            });
  }

  private MqttClient client(Mosquitto broker) throws Exception {
    MqttClient client = new MqttClient(broker.url().toString(), "button", new MemoryPersistence());
    client.connect();
    IMqttMessageListener listener =
        (topic, message) -> {
          String correlation = correlation(message);
          String text = new String(message.getPayload(), StandardCharsets.UTF_8);
          (correlation.equals(FIRST) ? refusals : heard)
              .add(topic + " " + correlation + " " + text);
        };
    client.subscribe(
        new MqttSubscription[] {
          new MqttSubscription("reply/#", 1),
          new MqttSubscription("meltkeeper/command/answer", 1),
          new MqttSubscription("meltkeeper/event", 1)
        },
        new IMqttMessageListener[] {listener, listener, listener});
    return client;
  }

  private static String correlation(MqttMessage message) {
    byte[] data = message.getProperties().getCorrelationData();
    return data == null ? "-" : new String(data, StandardCharsets.UTF_8);
  }

  private static void press(MqttClient client, String word, String correlation, String json)
      throws Exception {
    MqttProperties properties = new MqttProperties();
    properties.setResponseTopic("reply/button");
    properties.setCorrelationData(correlation.getBytes(StandardCharsets.UTF_8));
    client.publish(
        "meltkeeper/command/" + word,
        new MqttMessage(json.getBytes(StandardCharsets.UTF_8), 1, false, properties));
  }

  private void untilHeard(int count) {
    await().atMost(Duration.ofSeconds(30)).until(() -> heard.size() >= count);
  }

  @Test
  void swapByButton_isDoneAnsweredAndKnown_andTheLinerCallsWhenItIsTooHot() throws Exception {
    try (Mosquitto broker = Mosquitto.in(folder).start()) {
      Settings settings = settings(broker);
      MqttClient client = client(broker);
      try (Store store = Stores.open(settings.storeUrl());
          Agent agent = new Agent(settings, store, Agent.clockFor(store), Duration.ofMillis(100))) {
        assertThat(agent.port()).isPositive();
        awaitListening(client);
        press(client, "add", "2", "{\"kind\":\"liner\",\"by\":\"bench\"}");
        untilHeard(1);
        assertThat(heard.get(0))
            .startsWith("reply/button 2 {\"ok\":true,\"done\":\"L-001 is known as a new liner\"");
        press(client, "fit", "3", "{\"part\":\"L-001\",\"printer\":\"heron\",\"by\":\"bench\"}");
        press(client, "fit", "3", "{\"part\":\"L-001\",\"printer\":\"heron\",\"by\":\"bench\"}");
        untilHeard(3);
        assertThat(heard.get(1)).startsWith("reply/button 3 {\"ok\":true,");
        assertThat(heard.get(2)).isEqualTo(heard.get(1));
        assertThat(store.parts()).hasSize(1);

        await()
            .atMost(Duration.ofSeconds(60))
            .until(
                () -> {
                  try (Publisher printer = new Publisher(broker.url())) {
                    printer.publish(
                        "plant/heron/status", "{\"at\":\"" + Instant.now() + "\",\"now\":255}");
                  }
                  return heard.size() > 3;
                });
        assertThat(heard.get(3)).startsWith("meltkeeper/event - ").contains("\"too-hot\"");
        assertThat(store.outbox().latest(10))
            .extracting(AlertEntry::alert)
            .allMatch(alert -> alert.topic() == AlertTopic.TOO_HOT);
      } finally {
        client.disconnect();
        client.close();
      }
    }
  }

  /** Buttons pressed before the agent listens are not heard: press one until it answers. */
  private void awaitListening(MqttClient client) {
    await()
        .atMost(Duration.ofSeconds(30))
        .until(
            () -> {
              press(client, "paint", FIRST, "{}");
              return !refusals.isEmpty();
            });
    assertThat(refusals.get(0)).contains("\"ok\":false", "add, fit, remove, clean, retire");
  }
}
