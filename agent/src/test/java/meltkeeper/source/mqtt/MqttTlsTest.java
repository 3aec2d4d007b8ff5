package meltkeeper.source.mqtt;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import meltkeeper.source.SteadyClock;
import meltkeeper.testing.Catch;
import meltkeeper.testing.Certificates;
import meltkeeper.testing.Mosquitto;
import meltkeeper.testing.RealParts;
import meltkeeper.testing.ThreadLeaks;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** With a real broker behind TLS, certified by an authority of our own. */
@ExtendWith(ThreadLeaks.class)
class MqttTlsTest {

  private static final Duration SOON = Duration.ofSeconds(30);
  private static final int MESSAGES = 200;

  @TempDir Path folder;

  @ParameterizedTest
  @ValueSource(ints = {5, 3})
  void broker_withItsOwnName_isTrusted(int protocol) throws Exception {
    Certificates certificates = new Certificates(folder).issue("IP:127.0.0.1");
    Catch inlet = new Catch();
    try (Mosquitto broker = Mosquitto.in(folder, certificates.settings()).start();
        MqttSource source = source(broker, protocol, Optional.of(certificates.authority()))) {
      source.start(inlet);
      await().atMost(SOON).until(() -> source.state().isUp());
      publish(broker, certificates);
      await().atMost(SOON).until(() -> inlet.taken().size() == MESSAGES);
      assertThat(inlet.texts())
          .containsExactlyElementsOf(IntStream.range(0, MESSAGES).mapToObj(this::text).toList());
    }
  }

  @ParameterizedTest
  @ValueSource(ints = {5, 3})
  void broker_withAnotherName_isRefused(int protocol) throws Exception {
    Certificates certificates = new Certificates(folder).issue("DNS:broker.invalid");
    try (Mosquitto broker = Mosquitto.in(folder, certificates.settings()).start();
        MqttSource source = source(broker, protocol, Optional.of(certificates.authority()))) {
      source.start(new Catch());
      await().atMost(SOON).until(() -> source.state().reason().contains("127.0.0.1 found"));
      assertThat(source.state().isUp()).isFalse();
    }
  }

  @ParameterizedTest
  @ValueSource(ints = {5, 3})
  void broker_byAnUnknownAuthority_isRefused(int protocol) throws Exception {
    Certificates certificates = new Certificates(folder).issue("IP:127.0.0.1");
    try (Mosquitto broker = Mosquitto.in(folder, certificates.settings()).start();
        MqttSource source = source(broker, protocol, Optional.empty())) {
      source.start(new Catch());
      await().atMost(SOON).until(() -> source.state().reason().contains("certification path"));
    }
  }

  @ParameterizedTest
  @ValueSource(ints = {5, 3})
  void authorityFile_withoutACertificate_isSaid(int protocol) throws Exception {
    Path empty = Files.createFile(folder.resolve("empty.crt"));
    try (Mosquitto broker = Mosquitto.in(folder);
        MqttSource source = source(broker, protocol, Optional.of(empty))) {
      source.start(new Catch());
      await().atMost(SOON).until(() -> source.state().reason().contains("no certificate in"));
    }
  }

  /** Long enough to fill several TLS records. */
  private String text(int number) {
    return number + " " + "x".repeat(1_000);
  }

  private void publish(Mosquitto broker, Certificates certificates) throws Exception {
    Path lines = folder.resolve("lines");
    Files.write(lines, IntStream.range(0, MESSAGES).mapToObj(this::text).toList());
    Process publisher =
        new ProcessBuilder(
                RealParts.find("mosquitto_pub").toString(),
                "-h",
                "127.0.0.1",
                "-p",
                Integer.toString(broker.port()),
                "--cafile",
                certificates.authority().toString(),
                "-q",
                "1",
                "-t",
                "plant/heron/status",
                "-l")
            .redirectInput(lines.toFile())
            .start();
    assertThat(publisher.waitFor()).isZero();
  }

  private static MqttSource source(Mosquitto broker, int protocol, Optional<Path> caFile) {
    BrokerSettings settings =
        new BrokerSettings(
            "shop",
            URI.create("ssl://127.0.0.1:" + broker.port()),
            protocol,
            Optional.empty(),
            Optional.empty(),
            caFile,
            Optional.empty());
    return new MqttSource(
        settings, Session.kept("test", "shop"), List.of("plant/#"), new SteadyClock());
  }
}
