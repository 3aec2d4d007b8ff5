package meltkeeper.dashboards;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import meltkeeper.dashboards.Shipped.Board;
import meltkeeper.dashboards.Shipped.Line;
import meltkeeper.dashboards.Shipped.Panel;
import meltkeeper.testing.Alertmanager;
import meltkeeper.testing.LocalHttp;
import meltkeeper.testing.Prometheus;
import meltkeeper.testing.RealParts;
import meltkeeper.testing.RunningProgram;
import meltkeeper.testing.ThreadLeaks;
import org.awaitility.core.ThrowingRunnable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;

/**
 * The running demo, read by a real Prometheus under the shipped rules, a real Alertmanager behind
 * it. Only addresses and intervals differ from what is shipped.
 */
@ExtendWith(ThreadLeaks.class)
class MonitoredDemoTest {

  private static final ObjectMapper JSON = new ObjectMapper();
  private static final String OFTEN = "1s";

  @TempDir private Path folder;

  @Test
  void narrowingPrinter_isSeenAndCalled_andClearedOnceItIsMended() throws Exception {
    int port = RealParts.freePort();
    try (Phone phone = new Phone();
        RunningProgram demo = demo(port);
        Alertmanager manager = Alertmanager.start(folder, managing(phone));
        Prometheus prometheus =
            Prometheus.start(folder, reading(port, manager.port()), Shipped.CONSOLES)) {
      until("the agent is read", () -> one(prometheus, "up{job=\"meltkeeper\"}", 1));
      until("nobody is in trouble", () -> one(prometheus, level("heron"), 0));
      until("hours of a part", () -> hoursOfAPart(prometheus));

      until("kestrel narrows", () -> one(prometheus, ever(level("kestrel") + " == 1"), 1));
      until("the rule fires", () -> one(prometheus, ever(firing("MeltkeeperNarrowing")), 1));
      until(
          "the call arrives",
          () -> assertThat(phone.told()).contains("firing MeltkeeperNarrowing kestrel"));
      until("every panel shows something", () -> everyPanelShowsSomething(prometheus));
      until(
          "the console page shows the call",
          () ->
              assertThat(prometheus.get("/consoles/meltkeeper.html"))
                  .contains("What calls now", "kestrel", "L-014", "overdue", "</html>"));

      until("kestrel stalls", () -> one(prometheus, ever(level("kestrel")), 2));
      until("kestrel is mended", () -> mended(prometheus));
      until(
          "the all-clear arrives",
          () ->
              assertThat(phone.told())
                  .contains("resolved MeltkeeperNarrowing kestrel")
                  .contains("resolved MeltkeeperStalled kestrel"));
      assertThat(phone.told())
          .filteredOn(call -> call.contains("Narrowing") || call.contains("Stalled"))
          .allMatch(call -> call.endsWith(" kestrel"));
      demo.terminate();
      until("the agent is gone", () -> one(prometheus, "up{job=\"meltkeeper\"}", 0));
    }
  }

  private static void hoursOfAPart(Prometheus prometheus) throws IOException {
    // The demo's paper has 318 h for L-011 before it begins; it cannot have printed 10 h by now.
    String hours = "part:meltkeeper_part_hot_seconds:sum{part=\"L-011\"} / 3600";
    assertThat(prometheus.value(hours).orElse(0)).isBetween(318.0, 328.0);
  }

  /** Clear while it prints, so that it was looked at again; no call stands. */
  private static void mended(Prometheus prometheus) throws IOException {
    one(prometheus, level("kestrel") + " and meltkeeper_hot_end_printing == 1", 0);
    assertThat(prometheus.query(firing("Meltkeeper(Narrowing|Stalled)"))).isEmpty();
  }

  private static void everyPanelShowsSomething(Prometheus prometheus) throws IOException {
    for (Board board : Shipped.panels().dashboards()) {
      for (Panel panel : board.panels()) {
        for (Line line : panel.lines()) {
          List<JsonNode> found = prometheus.query(line.ask().replace("$printer", ".*"));
          if (!panel.mayBeEmpty()) {
            assertThat(found).as("%s: %s", panel.title(), line.ask()).isNotEmpty();
          }
        }
      }
    }
  }

  private static String level(String printer) {
    return "meltkeeper_jam_level{printer=\"" + printer + "\"}";
  }

  private static String firing(String alert) {
    return "ALERTS{alertname=~\"" + alert + "\",alertstate=\"firing\",printer=\"kestrel\"}";
  }

  /** The greatest that it ever was: a moment that fell between two polls counts. */
  private static String ever(String query) {
    return "max_over_time((" + query + ")[10m:1s])";
  }

  private static void one(Prometheus prometheus, String query, double value) throws IOException {
    assertThat(prometheus.value(query)).as(query).hasValue(value);
  }

  private static void until(String what, ThrowingRunnable holds) {
    await(what)
        .atMost(Duration.ofMinutes(4))
        .pollInterval(Duration.ofMillis(500))
        .ignoreExceptionsInstanceOf(IOException.class)
        .untilAsserted(holds);
  }

  private RunningProgram demo(int port) throws IOException {
    RunningProgram demo =
        RunningProgram.start(
            folder.resolve("demo.log"),
            List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-cp",
                System.getProperty("java.class.path"),
                "meltkeeper.cli.Main",
                "demo",
                "--listen",
                "127.0.0.1:" + port));
    until("the demo answers", () -> assertThat(new LocalHttp(port).answers("/healthz")).isTrue());
    return demo;
  }

  private Path reading(int agentPort, int managerPort) throws IOException {
    ObjectNode shipped = (ObjectNode) Shipped.tree(Shipped.FOLDER.resolve("prometheus.yaml"));
    shipped
        .withObject("/global")
        .put("scrape_interval", OFTEN)
        .put("scrape_timeout", OFTEN)
        .put("evaluation_interval", OFTEN);
    ArrayNode rules = shipped.putArray("rule_files");
    rules.add(Shipped.RECORDING.toString()).add(Shipped.ALERTS.toString());
    address(shipped.at("/scrape_configs/0/static_configs/0"), agentPort);
    address(shipped.at("/alerting/alertmanagers/0/static_configs/0"), managerPort);
    return Files.writeString(folder.resolve("prometheus.json"), JSON.writeValueAsString(shipped));
  }

  private static void address(JsonNode targets, int port) {
    ((ObjectNode) targets).putArray("targets").add("127.0.0.1:" + port);
  }

  private Path managing(Phone phone) throws IOException {
    ObjectNode shipped = (ObjectNode) Shipped.tree(Shipped.FOLDER.resolve("alertmanager.yaml"));
    for (JsonNode route : List.of(shipped.get("route"), shipped.at("/route/routes/0"))) {
      ((ObjectNode) route).put("group_wait", OFTEN).put("group_interval", OFTEN);
    }
    for (JsonNode receiver : shipped.get("receivers")) {
      ((ObjectNode) receiver.at("/webhook_configs/0")).put("url", phone.url());
    }
    return Files.writeString(folder.resolve("alertmanager.json"), JSON.writeValueAsString(shipped));
  }
}
