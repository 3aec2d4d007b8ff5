package meltkeeper.source.mqtt;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.IntStream;
import meltkeeper.protocol.Origin;
import meltkeeper.protocol.Received;
import meltkeeper.source.SourceState;
import meltkeeper.source.SteadyClock;
import meltkeeper.testing.Catch;
import meltkeeper.testing.Mosquitto;
import meltkeeper.testing.Publisher;
import meltkeeper.testing.RealParts;
import meltkeeper.testing.ThreadLeaks;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** With a real broker, at both protocol levels. */
@ExtendWith(ThreadLeaks.class)
class MqttSourceTest {

  private static final Duration SOON = Duration.ofSeconds(30);
  private static final Timing QUICK =
      new Timing(
          Duration.ofSeconds(1),
          Duration.ofSeconds(2),
          Duration.ofMillis(20),
          Duration.ofMillis(200),
          Duration.ofSeconds(1));

  @TempDir Path folder;

  @ParameterizedTest
  @ValueSource(ints = {5, 3})
  void message_published_isHandedOverAsItCame(int protocol) throws Exception {
    Catch inlet = new Catch();
    try (Mosquitto broker = Mosquitto.in(folder).start();
        MqttSource source = source(broker.url(), protocol);
        Publisher heron = new Publisher(broker.url())) {
      assertThat(source.state()).isEqualTo(SourceState.down("not started"));
      source.start(inlet);
      awaitUp(source);

      heron.publish("plant/heron/status", "{\"now\":215.5}");

      awaitTexts(inlet, List.of("{\"now\":215.5}"));
      Received received = inlet.taken().get(0);
      assertThat(received.origin()).isEqualTo(new Origin.Topic("shop", "plant/heron/status"));
      assertThat(received.retained()).isFalse();
      assertThat(received.arrival().steadyNanos() % 1000).isZero();
    }
  }

  @ParameterizedTest
  @ValueSource(ints = {5, 3})
  void broker_absentAtTheStart_isFoundWhenItComes(int protocol) throws Exception {
    Catch inlet = new Catch();
    try (Mosquitto broker = Mosquitto.in(folder);
        MqttSource source = source(broker.url(), protocol)) {
      source.start(inlet);
      await()
          .atMost(SOON)
          .untilAsserted(
              () -> assertThat(source.state().reason()).contains("Connection refused", "next try"));
      assertThat(source.state().isUp()).isFalse();

      broker.start();
      awaitUp(source);
      try (Publisher heron = new Publisher(broker.url())) {
        heron.publish("plant/heron/status", "1");
      }
      awaitTexts(inlet, List.of("1"));
    }
  }

  @ParameterizedTest
  @ValueSource(ints = {5, 3})
  void broker_stoppedAndStarted_resumesTheSession(int protocol) throws Exception {
    Catch inlet = new Catch();
    try (Mosquitto broker = Mosquitto.in(folder).start();
        MqttSource source = source(broker.url(), protocol)) {
      source.start(inlet);
      awaitUp(source);
      broker.stop();
      await().atMost(SOON).until(() -> !source.state().isUp());

      broker.start();
      try (Publisher heron = new Publisher(broker.url())) {
        // The broker holds them for the session if we are not back yet.
        heron.publish("plant/heron/status", "1");
        heron.publish("plant/heron/status", "2");
      }
      awaitTexts(inlet, List.of("1", "2"));
      awaitUp(source);
    }
  }

  @ParameterizedTest
  @ValueSource(ints = {5, 3})
  void messages_publishedWhileWeAreAway_arriveAfterwards(int protocol) throws Exception {
    try (Mosquitto broker = Mosquitto.in(folder).start()) {
      try (MqttSource first = source(broker.url(), protocol)) {
        first.start(new Catch());
        awaitUp(first);
      }
      try (Publisher heron = new Publisher(broker.url())) {
        heron.publish("plant/heron/status", "1");
      }
      broker.stop();
      broker.start();
      try (Publisher heron = new Publisher(broker.url())) {
        heron.publish("plant/heron/status", "2");
      }
      Catch inlet = new Catch();
      try (MqttSource second = source(broker.url(), protocol)) {
        second.start(inlet);
        awaitTexts(inlet, List.of("1", "2"));
        assertThat(inlet.taken()).noneMatch(Received::retained);
      }
    }
  }

  @ParameterizedTest
  @ValueSource(ints = {5, 3})
  void passingSession_leavesNothingBehind(int protocol) throws Exception {
    Session passing = Session.passing();
    try (Mosquitto broker = Mosquitto.in(folder).start()) {
      try (MqttSource first = source(broker.url(), protocol, passing)) {
        first.start(new Catch());
        awaitUp(first);
      }
      Catch inlet = new Catch();
      try (Publisher heron = new Publisher(broker.url());
          MqttSource second = source(broker.url(), protocol, passing)) {
        heron.publish("plant/heron/status", "while away");
        second.start(inlet);
        awaitUp(second);
        heron.publish("plant/heron/status", "while here");
        awaitTexts(inlet, List.of("while here"));
      }
    }
  }

  @ParameterizedTest
  @ValueSource(ints = {5, 3})
  void retainedMessage_bearsTheMark_andFreshOnesDoNot(int protocol) throws Exception {
    Catch inlet = new Catch();
    try (Mosquitto broker = Mosquitto.in(folder).start();
        MqttSource source = source(broker.url(), protocol);
        Publisher heron = new Publisher(broker.url())) {
      heron.publish("plant/heron/status", "kept", true);
      source.start(inlet);
      awaitTexts(inlet, List.of("kept"));
      heron.publish("plant/heron/status", "fresh", true);
      awaitTexts(inlet, List.of("kept", "fresh"));
      assertThat(inlet.taken()).extracting(Received::retained).containsExactly(true, false);
    }
  }

  @ParameterizedTest
  @ValueSource(ints = {5, 3})
  void frozenBroker_isGivenUp_andFoundAgain(int protocol) throws Exception {
    Catch inlet = new Catch();
    try (Mosquitto broker = Mosquitto.in(folder).start();
        MqttSource source = source(broker.url(), protocol)) {
      source.start(inlet);
      awaitUp(source);
      broker.freeze();
      // First the keep-alive finds out; then connects are accepted, but never answered.
      await().atMost(SOON).until(() -> source.state().reason().contains("does not answer"));
      broker.thaw();
      awaitUp(source);
      try (Publisher heron = new Publisher(broker.url())) {
        heron.publish("plant/heron/status", "1");
      }
      awaitTexts(inlet, List.of("1"));
    }
  }

  @ParameterizedTest
  @ValueSource(ints = {5, 3})
  void inletBlocked_overManyMessages_losesNothing(int protocol) throws Exception {
    int count = 20_000;
    Catch inlet = new Catch();
    List<String> sent = IntStream.range(0, count).mapToObj(Integer::toString).toList();
    try (Mosquitto broker = Mosquitto.in(folder).start();
        MqttSource source = source(broker.url(), protocol)) {
      source.start(inlet);
      awaitUp(source);
      inlet.shut();
      try (Publisher heron = new Publisher(broker.url())) {
        for (String text : sent) {
          heron.publish("plant/heron/status", text);
        }
      }
      assertThat(inlet.taken()).isEmpty();
      inlet.open();
      await()
          .atMost(Duration.ofSeconds(60))
          .until(() -> new LinkedHashSet<>(inlet.texts()).size() == count);
      // The block outlasted the keep-alive of one second, so the first few may come twice.
      assertThat(new LinkedHashSet<>(inlet.texts())).containsExactlyElementsOf(sent);
    }
  }

  @ParameterizedTest
  @ValueSource(ints = {5, 3})
  void source_closedWhileTheInletBlocks_leavesTheMessageWithTheBroker(int protocol)
      throws Exception {
    Catch shut = new Catch();
    try (Mosquitto broker = Mosquitto.in(folder).start()) {
      try (MqttSource first = source(broker.url(), protocol);
          Publisher heron = new Publisher(broker.url())) {
        first.start(shut);
        awaitUp(first);
        shut.shut();
        heron.publish("plant/heron/status", "1");
        heron.publish("plant/heron/status", "2");
        await().atMost(SOON).until(shut::isBlocking);
      }
      assertThat(shut.taken()).isEmpty();
      Catch inlet = new Catch();
      try (MqttSource second = source(broker.url(), protocol)) {
        second.start(inlet);
        awaitTexts(inlet, List.of("1", "2"));
      }
    }
  }

  @ParameterizedTest
  @ValueSource(ints = {5, 3})
  void inletThatFails_isTriedAgainWithTheSameMessage(int protocol) throws Exception {
    Catch inlet = new Catch();
    AtomicInteger failures = new AtomicInteger(2);
    try (Mosquitto broker = Mosquitto.in(folder).start();
        MqttSource source = source(broker.url(), protocol);
        Publisher heron = new Publisher(broker.url())) {
      source.start(
          received -> {
            if (failures.getAndDecrement() > 0) {
              throw new IllegalStateException("the disk is full, says this test");
            }
            inlet.accept(received);
          });
      awaitUp(source);
      heron.publish("plant/heron/status", "1");
      heron.publish("plant/heron/status", "2");
      awaitTexts(inlet, List.of("1", "2"));
    }
  }

  @ParameterizedTest
  @ValueSource(ints = {5, 3})
  void password_wrongAndThenCorrected_isReadAnew(int protocol) throws Exception {
    Path users = folder.resolve("users");
    // The broker hashes it: mosquitto_passwd -b users meltkeeper right
    new ProcessBuilder(
            RealParts.find("mosquitto_passwd").toString(),
            "-b",
            "-c",
            users.toString(),
            "meltkeeper",
            "right")
        .start()
        .waitFor();
    Path passwordFile = Files.writeString(folder.resolve("password"), "wrong\n");
    Catch inlet = new Catch();
    try (Mosquitto broker =
            Mosquitto.in(folder, "allow_anonymous false", "password_file " + users).start();
        MqttSource source = source(with(broker.url(), protocol, passwordFile))) {
      source.start(inlet);
      await().atMost(SOON).until(() -> source.state().reason().contains("ot authorized"));

      Files.writeString(passwordFile, "right\n");
      awaitUp(source);
    }
  }

  @ParameterizedTest
  @ValueSource(ints = {5, 3})
  void passwordFile_missing_isSaid(int protocol) throws Exception {
    Path missing = folder.resolve("no-such-file");
    try (MqttSource source = source(with(URI.create("tcp://127.0.0.1:1"), protocol, missing))) {
      source.start(new Catch());
      await().atMost(SOON).until(() -> source.state().reason().contains("no-such-file"));
    }
  }

  private static MqttSource source(URI url, int protocol) {
    return source(url, protocol, Session.kept("test", "shop"));
  }

  private static MqttSource source(URI url, int protocol, Session session) {
    BrokerSettings settings =
        new BrokerSettings(
            "shop",
            url,
            protocol,
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty());
    return new MqttSource(settings, session, List.of("plant/#"), new SteadyClock(), QUICK);
  }

  private static MqttSource source(BrokerSettings settings) {
    return new MqttSource(
        settings, Session.kept("test", "shop"), List.of("plant/#"), new SteadyClock(), QUICK);
  }

  private static BrokerSettings with(URI url, int protocol, Path passwordFile) {
    return new BrokerSettings(
        "shop",
        url,
        protocol,
        Optional.of("meltkeeper"),
        Optional.of(passwordFile),
        Optional.empty(),
        Optional.empty());
  }

  private static void awaitUp(MqttSource source) {
    await("connected").atMost(SOON).until(() -> source.state().isUp());
  }

  private static void awaitTexts(Catch inlet, List<String> texts) {
    await("all arrived")
        .atMost(SOON)
        .untilAsserted(() -> assertThat(inlet.texts()).isEqualTo(texts));
  }
}
