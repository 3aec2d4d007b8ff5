package meltkeeper.cli.service;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import com.sun.net.httpserver.HttpServer;
import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Supplier;
import meltkeeper.testing.RealParts;
import meltkeeper.testing.RunningProgram;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The real {@code systemd-notify}, and a socket of our own in the manager's place. */
class ServiceManagerTest {

  private static final String WATCHDOG_MICROS = "900000";

  @TempDir private Path folder;
  private HttpServer page;

  @BeforeEach
  void servePage() throws IOException {
    page = HttpServer.create(new InetSocketAddress(InetAddress.getLoopbackAddress(), 0), 0);
    page.createContext(
        "/healthz",
        exchange -> {
          exchange.sendResponseHeaders(503, -1);
          exchange.close();
        });
    page.start();
  }

  @AfterEach
  void endPage() {
    page.stop(0);
  }

  private Heartbeat heart(Supplier<?> snapshot) {
    return new Heartbeat(
        snapshot, URI.create("http://127.0.0.1:" + page.getAddress().getPort() + "/healthz"));
  }

  /** Perl, because it lets go at once of the file handle by which systemd-notify waits for us. */
  private static final String LISTEN =
      """
      use Socket; $| = 1;
      socket(my $manager, AF_UNIX, SOCK_DGRAM, 0) or die;
      bind($manager, sockaddr_un($ARGV[0])) or die;
      while (defined recv($manager, my $states, 4096, 0)) { print "$states\n" }
      """;

  private RunningProgram listener() throws IOException {
    RealParts.find("systemd-notify");
    RunningProgram perl =
        RunningProgram.start(
            folder.resolve("heard"),
            List.of(
                RealParts.find("perl").toString(),
                "-e",
                LISTEN,
                folder.resolve("notify").toString()));
    await().until(() -> Files.exists(folder.resolve("notify")));
    return perl;
  }

  private ServiceManager manager() {
    return ServiceManager.of(
        Map.of(
            "NOTIFY_SOCKET",
            folder.resolve("notify").toString(),
            "WATCHDOG_USEC",
            WATCHDOG_MICROS));
  }

  private String heard() throws IOException {
    Path file = folder.resolve("heard");
    return Files.exists(file) ? Files.readString(file) : "";
  }

  @Test
  void agentAtWork_isTold_readyThenAliveThenStopping() throws Exception {
    try (RunningProgram perl = listener()) {
      try (Vigil vigil = new Vigil(manager(), heart(Object::new), () -> "1 of 1 sources")) {
        vigil.begin();
        await().untilAsserted(() -> assertThat(heard()).contains("WATCHDOG=1"));
        assertThat(heard()).startsWith("READY=1\nSTATUS=1 of 1 sources").doesNotContain("STOPPING");
      }
      assertThat(heard()).contains("STOPPING=1");
      assertThat(perl.isRunning()).isTrue();
    }
  }

  @Test
  void writerThatStands_isNotToldAlive() throws Exception {
    AtomicInteger asked = new AtomicInteger();
    Object same = new Object();
    try (RunningProgram perl = listener();
        Vigil vigil =
            new Vigil(
                manager(),
                heart(
                    () -> {
                      asked.incrementAndGet();
                      return same;
                    }),
                () -> "stands")) {
      vigil.begin();
      await().until(() -> asked.get() >= 4);
      // The first question has nothing to compare with; after it, there is no sign of life.
      assertThat(heard().split("WATCHDOG=1", -1)).hasSizeLessThanOrEqualTo(2);
      assertThat(perl.isRunning()).isTrue();
    }
  }

  @Test
  void pageThatDoesNotAnswer_isNoHeartbeat() {
    Heartbeat heart = heart(Object::new);
    assertThat(heart.beats()).isTrue();
    page.stop(0);
    assertThat(heart.beats()).isFalse();
  }

  @Test
  void processThatNobodyWatches_tellsNobody() {
    ServiceManager manager = ServiceManager.of(Map.of("WATCHDOG_USEC", WATCHDOG_MICROS));
    assertThat(manager.watchdog()).isEmpty();
    manager.ready("fine");
    manager.stopping();
  }

  @Test
  void watchdogInterval_isReadAsMicroseconds() {
    assertThat(manager().watchdog()).contains(Duration.ofMillis(900));
    assertThat(
            ServiceManager.of(Map.of("NOTIFY_SOCKET", "/nowhere", "WATCHDOG_USEC", "soon"))
                .watchdog())
        .isEmpty();
  }
}
