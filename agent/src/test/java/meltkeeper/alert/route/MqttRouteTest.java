package meltkeeper.alert.route;

import static meltkeeper.alert.Calls.message;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.awaitility.Awaitility.await;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentSkipListMap;
import meltkeeper.alert.Calls;
import meltkeeper.source.mqtt.BrokerSettings;
import meltkeeper.source.mqtt.MqttPublisher;
import meltkeeper.store.Alert;
import meltkeeper.store.AlertTopic;
import meltkeeper.testing.Mosquitto;
import meltkeeper.testing.ThreadLeaks;
import org.eclipse.paho.client.mqttv3.MqttClient;
import org.eclipse.paho.client.mqttv3.persist.MemoryPersistence;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Alerts at a real broker. */
@ExtendWith(ThreadLeaks.class)
final class MqttRouteTest {

  private static final String STATE = "meltkeeper/state/hot-end/heron/0/too-hot";

  @TempDir private Path folder;

  private static Route route(Mosquitto broker, int protocol) {
    MqttPublisher publisher =
        new MqttPublisher(
            new BrokerSettings(
                "shop",
                broker.url(),
                protocol,
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty()),
            Duration.ofSeconds(2));
    return new MqttRoute(
        "meltkeeper",
        new Publishing() {
          @Override
          public void publish(String topic, String payload, boolean retained)
              throws UndeliveredException, InterruptedException {
            try {
              publisher.publish(topic, payload, retained);
            } catch (IOException e) {
              throw UndeliveredException.forNow(String.valueOf(e.getMessage()));
            }
          }

          @Override
          public void close() {
            publisher.close();
          }
        });
  }

  /** What somebody who comes now finds, and hears, by topic. */
  private static Map<String, String> heardAfter(Mosquitto broker, Act act) throws Exception {
    Map<String, String> heard = new ConcurrentSkipListMap<>();
    MqttClient client =
        new MqttClient(broker.url().toString(), "listener", new MemoryPersistence());
    client.connect();
    try {
      client.subscribe(
          "#",
          1,
          (topic, message) ->
              heard.put(topic, new String(message.getPayload(), StandardCharsets.UTF_8)));
      act.run();
      client.publish("end", new byte[] {1}, 1, false);
      await().until(() -> heard.containsKey("end"));
    } finally {
      client.disconnect();
      client.close();
    }
    return heard;
  }

  private interface Act {
    void run() throws Exception;
  }

  @ParameterizedTest
  @ValueSource(ints = {3, 5})
  void alert_isAnEvent_andARetainedStateUntilItsAllClear(int protocol) throws Exception {
    try (Mosquitto broker = Mosquitto.in(folder).start();
        Route route = route(broker, protocol)) {
      Map<String, String> live =
          heardAfter(broker, () -> route.deliver(message(AlertTopic.TOO_HOT)));
      assertThat(live.get("meltkeeper/event")).contains("\"topic\":\"too-hot\"");

      Map<String, String> later = heardAfter(broker, () -> {});
      assertThat(later).doesNotContainKey("meltkeeper/event");
      assertThat(later.get(STATE)).contains("\"open\":true", "\"phase\":\"began\"");

      route.deliver(new Message(Calls.alert(AlertTopic.TOO_HOT, Alert.Phase.ALL_CLEAR), false));
      assertThat(heardAfter(broker, () -> {}).get(STATE)).contains("\"open\":false");
    }
  }

  @Test
  void sample_leavesNoState() throws Exception {
    try (Mosquitto broker = Mosquitto.in(folder).start();
        Route route = route(broker, 5)) {
      Map<String, String> live =
          heardAfter(broker, () -> route.deliver(Message.sample("board", Calls.MORNING)));
      assertThat(live.get("meltkeeper/event")).contains("\"sample\":true");
      assertThat(heardAfter(broker, () -> {})).containsOnlyKeys("end");
    }
  }

  @ParameterizedTest
  @ValueSource(ints = {3, 5})
  void brokerThatGoesAway_fails_andWorksOnceItIsBack(int protocol) throws Exception {
    try (Mosquitto broker = Mosquitto.in(folder).start();
        Route route = route(broker, protocol)) {
      route.deliver(message(AlertTopic.TOO_HOT));
      broker.stop();
      assertThat(failure(route).isFinal()).isFalse();
      assertThat(failure(route).isFinal()).isFalse();
      broker.start();
      route.deliver(message(AlertTopic.IDLE_HOT));
    }
  }

  @ParameterizedTest
  @ValueSource(ints = {3, 5})
  void brokerThatAcceptsAndNeverAnswers_failsInBoundedTime(int protocol) throws Exception {
    try (Mosquitto broker = Mosquitto.in(folder).start();
        Route route = route(broker, protocol)) {
      route.deliver(message(AlertTopic.TOO_HOT));
      broker.freeze();
      assertThat(failure(route)).hasMessageContaining("does not answer within 2 s");
      broker.thaw();
      route.deliver(message(AlertTopic.IDLE_HOT));
    }
  }

  private static UndeliveredException failure(Route route) {
    return catchThrowableOfType(
        UndeliveredException.class, () -> route.deliver(message(AlertTopic.TOO_HOT)));
  }
}
