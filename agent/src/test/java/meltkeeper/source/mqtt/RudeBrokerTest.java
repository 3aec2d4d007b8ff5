package meltkeeper.source.mqtt;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.net.URI;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicInteger;
import meltkeeper.source.SteadyClock;
import meltkeeper.testing.Catch;
import meltkeeper.testing.ThreadLeaks;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * A peer that takes each connection and hangs up at once, as a port forwarder does whose broker is
 * down.
 */
@ExtendWith(ThreadLeaks.class)
class RudeBrokerTest {

  private static final Timing QUICK =
      new Timing(
          Duration.ofSeconds(1),
          Duration.ofSeconds(2),
          Duration.ofMillis(1),
          Duration.ofMillis(2),
          Duration.ofSeconds(1));

  @ParameterizedTest
  @ValueSource(ints = {5, 3})
  void manyHangUps_leaveNoThreadBehind(int protocol) throws Exception {
    AtomicInteger taken = new AtomicInteger();
    try (ServerSocket rude = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
      Thread thread = new Thread(() -> hangUpOnAll(rude, taken), "rude broker");
      thread.start();
      BrokerSettings settings =
          new BrokerSettings(
              "shop",
              URI.create("tcp://127.0.0.1:" + rude.getLocalPort()),
              protocol,
              Optional.empty(),
              Optional.empty(),
              Optional.empty(),
              Optional.empty());
      try (MqttSource source =
          new MqttSource(
              settings, Session.passing(), List.of("plant/#"), new SteadyClock(), QUICK)) {
        source.start(new Catch());
        await().atMost(Duration.ofSeconds(60)).until(() -> taken.get() > 20);
        assertThat(source.state().isUp()).isFalse();
        // A thread or two of the try under way; twenty would have piled up.
        assertThat(Thread.getAllStackTraces().keySet())
            .filteredOn(other -> other.getName().startsWith("MQTT"))
            .hasSizeLessThan(8);
      }
    }
  }

  private static void hangUpOnAll(ServerSocket rude, AtomicInteger taken) {
    while (!rude.isClosed()) {
      try (Socket socket = rude.accept()) {
        taken.incrementAndGet();
        socket.setSoLinger(true, 0);
      } catch (IOException e) {
        // Either side has gone; the loop looks whether it was this one.
      }
    }
  }
}
