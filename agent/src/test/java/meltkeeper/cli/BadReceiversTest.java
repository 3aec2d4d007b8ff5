package meltkeeper.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.sun.net.httpserver.HttpServer;
import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.ServerSocket;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import meltkeeper.config.ConfigReader;
import meltkeeper.config.Settings;
import meltkeeper.part.Moments;
import meltkeeper.protocol.HotEnd;
import meltkeeper.source.SteadyClock;
import meltkeeper.store.Alert;
import meltkeeper.store.AlertTopic;
import meltkeeper.store.Episode;
import meltkeeper.store.MemoryStore;
import meltkeeper.store.Posting;
import meltkeeper.store.Subject;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Whoever watches the agent sees which receivers are out of order, and why. */
final class BadReceiversTest {

  private static final InetAddress HERE = InetAddress.getLoopbackAddress();

  @TempDir private Path folder;
  private final HttpClient client = HttpClient.newHttpClient();

  private Settings settings(int mute, int failing, int nobody) {
    return ConfigReader.read(
            folder.resolve("meltkeeper.yaml").toString(),
            """
            http: { listen: 127.0.0.1:0 }
            brokers:
              gone: { url: tcp://127.0.0.1:%3$d }
            printers:
              ibis: { from: { tcp: 127.0.0.1:%3$d } }
            alerts:
              most-waiting: 10
              routes:
                mute: { webhook: "http://127.0.0.1:%1$d/", timeout: 500ms }
                failing: { webhook: "http://127.0.0.1:%2$d/" }
                board: { mqtt: gone, timeout: 500ms }
            """
                .formatted(mute, failing, nobody))
        .fold(
            valid -> valid,
            faults -> {
              throw new AssertionError(faults.toString());
            });
  }

  private static HttpServer failing() throws IOException {
    HttpServer server = HttpServer.create(new InetSocketAddress(HERE, 0), 0);
    server.createContext(
        "/",
        exchange -> {
          exchange.sendResponseHeaders(500, -1);
          exchange.close();
        });
    server.start();
    return server;
  }

  private static int portOfNobody() throws IOException {
    try (ServerSocket closed = new ServerSocket(0, 1, HERE)) {
      return closed.getLocalPort();
    }
  }

  private static List<Posting> jams(int from, int until, String... routes) {
    long now = Moments.nanos(Instant.now());
    List<Posting> jams = new ArrayList<>();
    for (int i = from; i < until; i++) {
      Episode episode =
          new Episode(AlertTopic.JAM_STALLED, new Subject.OfHotEnd(new HotEnd("ibis", i)), now);
      jams.add(
          new Posting(new Alert(episode, Alert.Phase.BEGAN, 0, now, "stalled"), List.of(routes)));
    }
    return jams;
  }

  private String got(Agent agent, String path) throws IOException, InterruptedException {
    HttpRequest request =
        HttpRequest.newBuilder(URI.create("http://127.0.0.1:" + agent.port() + path)).build();
    return client.send(request, BodyHandlers.ofString()).body();
  }

  @Test
  void receiversOutOfOrder_showInHealthAndMetrics_andTheAgentIsWell() throws Exception {
    HttpServer failing = failing();
    try (ServerSocket mute = new ServerSocket(0, 50, HERE)) {
      Settings settings =
          settings(mute.getLocalPort(), failing.getAddress().getPort(), portOfNobody());
      MemoryStore store = new MemoryStore();
      store.outbox().post(jams(0, 12, "failing"));
      store.outbox().post(jams(12, 15, "mute", "board"));
      try (Agent agent = new Agent(settings, store, new SteadyClock(), Duration.ofMillis(100))) {
        await().atMost(Duration.ofSeconds(60)).untilAsserted(() -> assertThatAllIsSeen(agent));
      }
    } finally {
      failing.stop(0);
    }
  }

  private void assertThatAllIsSeen(Agent agent) throws IOException, InterruptedException {
    JsonNode health = new ObjectMapper().readTree(got(agent, "/healthz"));
    assertThat(health.at("/status").asText()).isEqualTo("ok");
    assertThat(health.at("/routes/mute").asText()).isEqualTo("no answer within 500 ms");
    assertThat(health.at("/routes/board").asText()).isNotEmpty().isNotEqualTo("ok");
    assertThat(health.at("/routes/failing").asText())
        .isEqualTo(
            "10 alerts wait, which is all that may; the oldest are given up: it answered 500");
    assertThat(got(agent, "/metrics").lines())
        .contains(
            "meltkeeper_alert_route_up{route=\"mute\"} 0.0",
            "meltkeeper_alert_route_up{route=\"board\"} 0.0",
            "meltkeeper_alert_route_up{route=\"failing\"} 0.0",
            "meltkeeper_alert_route_full{route=\"failing\"} 1.0",
            "meltkeeper_alert_route_full{route=\"board\"} 0.0",
            "meltkeeper_alerts_waiting{route=\"failing\"} 10.0",
            "meltkeeper_alerts_waiting{route=\"board\"} 3.0");
  }
}
