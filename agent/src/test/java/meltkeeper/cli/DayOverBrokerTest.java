package meltkeeper.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.withinPercentage;
import static org.awaitility.Awaitility.await;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.function.BooleanSupplier;
import meltkeeper.ledger.Tally;
import meltkeeper.protocol.HotEnd;
import meltkeeper.store.Store;
import meltkeeper.store.sql.Stores;
import meltkeeper.testing.Mosquitto;
import meltkeeper.testing.Publisher;
import meltkeeper.testing.RealParts;
import meltkeeper.testing.RunningProgram;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A day through a real broker into a real store, with a broker stopped and an agent killed. */
class DayOverBrokerTest {

  private static final HotEnd HERON = HotEnd.first("heron");

  @TempDir private Path folder = Path.of("");

  private Path config(Mosquitto broker, String protocol) throws IOException {
    Path file = folder.resolve("meltkeeper.yaml");
    Files.writeString(
        file,
        """
        store: jdbc:sqlite:shop.db
        http: { listen: 127.0.0.1:%d }
        brokers:
          shop: { url: %s, protocol: %s }
        mappings:
          status-json:
            - topic: plant/{printer}/status
              time: { at: /at, format: iso }
              read:
                hot-end-temperature: /hotend/now
                hot-end-target: /hotend/set
                filament-commanded: /feed/asked
        printers:
          heron: { from: { broker: shop, mapping: status-json } }
        """
            .formatted(RealParts.freePort(), broker.url(), protocol));
    return file;
  }

  private RunningProgram agent(Path config) throws IOException {
    return RunningProgram.start(
        folder.resolve("agent.log"),
        List.of(
            Path.of(System.getProperty("java.home"), "bin", "java").toString(),
            "-cp",
            System.getProperty("java.class.path"),
            "meltkeeper.cli.Main",
            "run",
            "--config",
            config.toString()));
  }

  private long logged(String words) throws IOException {
    Path log = folder.resolve("agent.log");
    return Files.exists(log)
        ? Files.readAllLines(log).stream().filter(line -> line.contains(words)).count()
        : 0;
  }

  private static void until(String what, BooleanSupplier condition) {
    await(what).atMost(Duration.ofSeconds(60)).until(condition::getAsBoolean);
  }

  private static void publish(Mosquitto broker, int from, int until) throws Exception {
    try (Publisher publisher = new Publisher(broker.url())) {
      for (int second : Day.samples(from, until)) {
        publisher.publish("plant/heron/status", Day.payload(second));
      }
    }
  }

  private Tally stored() {
    try (Store store = Stores.open("jdbc:sqlite:" + folder.resolve("shop.db"))) {
      return store.tally(HERON, Long.MIN_VALUE, Long.MAX_VALUE);
    }
  }

  private void untilFed(int seconds) {
    until("fed up to second " + seconds, () -> stored().commandedMicrometres() >= seconds * 1500L);
  }

  @ParameterizedTest
  @ValueSource(strings = {"5", "3.1.1"})
  void day_withABrokerStoppedAndAnAgentKilled_isCreditedOnce(String protocol) throws Exception {
    Path data = Files.createDirectory(folder.resolve("broker"));
    try (Mosquitto broker = Mosquitto.in(data, "max_inflight_messages 1000").start()) {
      Path config = config(broker, protocol);
      int third = Day.SECONDS / 3;
      try (RunningProgram first = agent(config)) {
        awaitConnections(1);
        publish(broker, 0, third);
        broker.stop();
        broker.start();
        awaitConnections(2);
        publish(broker, third, third + 9_000);
        untilFed(third + 9_000 - Day.EVERY);
        first.kill();
      }
      publish(broker, third + 9_000, 2 * third);
      try (RunningProgram second = agent(config)) {
        awaitConnections(3);
        publish(broker, 2 * third, Day.SECONDS + Day.EVERY);
        untilFed(Day.SECONDS);
        second.terminate();
      }
    }

    Tally tally = stored();
    assertThat(tally.exposure().hotNanos() / 1e9).isCloseTo(Day.HOT_SECONDS, withinPercentage(0.1));
    assertThat(tally.exposure().bands().keySet()).isEqualTo(Day.secondsByBand().keySet());
    Day.secondsByBand()
        .forEach(
            (band, seconds) ->
                assertThat(tally.exposure().in(band).nanos() / 1e9)
                    .as("band " + band)
                    .isCloseTo(seconds, withinPercentage(0.1)));
    assertThat(tally.commandedMicrometres()).isEqualTo(Day.SECONDS * 1500L);
    assertThat(tally.unobservedNanos()).isZero();
  }

  private void awaitConnections(int count) {
    await("connection " + count)
        .atMost(Duration.ofSeconds(60))
        .until(() -> logged("connected to") >= count);
  }
}
