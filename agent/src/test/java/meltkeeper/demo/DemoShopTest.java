package meltkeeper.demo;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import meltkeeper.config.ConfigReader;
import meltkeeper.protocol.Fault;
import org.eclipse.paho.client.mqttv3.MqttClient;
import org.eclipse.paho.client.mqttv3.persist.MemoryPersistence;
import org.junit.jupiter.api.Test;

class DemoShopTest {

  @Test
  void shop_openedAndClosed_isValidPublishesAndLeavesNothing() throws Exception {
    Leaks leaks = new Leaks();
    DemoShop shop = new DemoShop(1_772_438_400_000_000_000L, 60);
    String configuration = shop.configuration();
    List<Fault> faults = ConfigReader.read("demo", configuration).fold(s -> List.of(), f -> f);
    assertThat(faults).isEmpty();
    Path folder = Path.of(found(configuration, "sqlite:(.*)/meltkeeper.db"));
    URI broker = URI.create(found(configuration, "url: \"(tcp:[^\"]*)\""));
    int port = Integer.parseInt(found(configuration, "tcp: \"127.0.0.1:(\\d+)\""));
    assertThat(folder).isDirectory();
    Set<String> topics = ConcurrentHashMap.newKeySet();
    MqttClient client = new MqttClient(broker.toString(), "test", new MemoryPersistence());
    client.connect();
    client.subscribe("#", 0, (topic, message) -> topics.add(topic));
    shop.start();
    await()
        .atMost(Duration.ofSeconds(30))
        .until(
            () ->
                topics.containsAll(
                    Set.of("plant/heron/status", "plant/kestrel/status", "bench/ibis/hotend/now")));
    client.disconnect();
    client.close();
    Files.writeString(folder.resolve("meltkeeper.db"), "as the agent would");
    shop.close();
    assertThat(folder).doesNotExist();
    Leaks.isFree(broker.getPort());
    Leaks.isFree(port);
    leaks.noThreadIsLeft();
  }

  private static String found(String text, String pattern) {
    Matcher matcher = Pattern.compile(pattern).matcher(text);
    assertThat(matcher.find()).isTrue();
    return matcher.group(1);
  }
}
