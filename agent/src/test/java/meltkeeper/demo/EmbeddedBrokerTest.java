package meltkeeper.demo;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import org.eclipse.paho.mqttv5.client.IMqttMessageListener;
import org.eclipse.paho.mqttv5.common.MqttSubscription;
import org.junit.jupiter.api.Test;

class EmbeddedBrokerTest {

  private static final byte[] PAYLOAD = "21.5".getBytes(StandardCharsets.UTF_8);

  @Test
  void broker_ofBothProtocolLevels_passesMessagesBetweenThemAndLeavesNothing() throws Exception {
    Leaks leaks = new Leaks();
    EmbeddedBroker broker = new EmbeddedBroker();
    LinkedBlockingQueue<String> at3 = new LinkedBlockingQueue<>();
    LinkedBlockingQueue<String> at5 = new LinkedBlockingQueue<>();
    var client3 =
        new org.eclipse.paho.client.mqttv3.MqttClient(
            broker.url().toString(),
            "three",
            new org.eclipse.paho.client.mqttv3.persist.MemoryPersistence());
    var client5 =
        new org.eclipse.paho.mqttv5.client.MqttClient(
            broker.url().toString(),
            "five",
            new org.eclipse.paho.mqttv5.client.persist.MemoryPersistence());
    client3.connect();
    client5.connect();
    client3.subscribe("plant/+/status", 1, (topic, message) -> at3.add(topic + " " + message));
    IMqttMessageListener listener = (topic, message) -> at5.add(topic + " " + message);
    client5.subscribe(
        new MqttSubscription[] {new MqttSubscription("plant/+/status", 1)},
        new IMqttMessageListener[] {listener});
    client3.publish("plant/heron/status", PAYLOAD, 1, false);
    client5.publish("plant/ibis/status", PAYLOAD, 1, false);
    for (LinkedBlockingQueue<String> got : java.util.List.of(at3, at5)) {
      assertThat(java.util.List.of(next(got), next(got)))
          .containsExactlyInAnyOrder("plant/heron/status 21.5", "plant/ibis/status 21.5");
    }
    client3.disconnect();
    client3.close();
    client5.disconnect();
    client5.close();
    broker.close();
    Leaks.isFree(broker.url().getPort());
    leaks.noThreadIsLeft();
  }

  private static String next(LinkedBlockingQueue<String> queue) throws InterruptedException {
    return java.util.Objects.requireNonNullElse(queue.poll(20, TimeUnit.SECONDS), "nothing came");
  }
}
