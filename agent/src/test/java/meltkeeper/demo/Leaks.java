package meltkeeper.demo;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.time.Duration;
import java.util.HashSet;
import java.util.Set;

/** The threads and ports that a test must leave as it found them. */
final class Leaks {

  private final Set<Thread> before = threads();

  private static Set<Thread> threads() {
    return new HashSet<>(Thread.getAllStackTraces().keySet());
  }

  /** Waits until no thread is left that was not there when this was made. */
  void noThreadIsLeft() {
    await()
        .atMost(Duration.ofSeconds(30))
        .untilAsserted(
            () -> {
              Set<Thread> left = threads();
              left.removeAll(before);
              left.removeIf(thread -> thread.getName().startsWith("awaitility"));
              assertThat(left).isEmpty();
            });
  }

  /** A port can be listened on again. */
  static void isFree(int port) throws IOException {
    try (ServerSocket again = new ServerSocket(port, 1, InetAddress.getLoopbackAddress())) {
      assertThat(again.getLocalPort()).isEqualTo(port);
    }
  }
}
