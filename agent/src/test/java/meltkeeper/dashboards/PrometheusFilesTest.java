package meltkeeper.dashboards;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import meltkeeper.dashboards.Shipped.Rule;
import meltkeeper.testing.Generated;
import meltkeeper.testing.Tool;
import org.junit.jupiter.api.Test;

/** The rules and configurations, by Prometheus' and Alertmanager's own tools. */
class PrometheusFilesTest {

  private static final Pattern ALERT = Pattern.compile("alertname=\"(\\w+)\"");

  private static void passes(String tool, String... arguments)
      throws IOException, InterruptedException {
    Tool.Answer answer = Tool.find(tool).run(arguments);
    assertThat(answer.code()).as(answer.text()).isZero();
  }

  @Test
  void rules_areValid() throws IOException, InterruptedException {
    passes("promtool", "check", "rules", Shipped.ALERTS.toString(), Shipped.RECORDING.toString());
  }

  @Test
  void rules_pullTheirWeight() throws IOException, InterruptedException {
    passes(
        "promtool",
        Stream.concat(Stream.of("test", "rules"), Shipped.ruleTests().stream().map(Path::toString))
            .toArray(String[]::new));
  }

  @Test
  void everyAlert_isTriedFiringAndQuiet() throws IOException {
    Set<String> firing = new HashSet<>();
    Set<String> quiet = new HashSet<>();
    for (Path file : Shipped.ruleTests()) {
      for (JsonNode test : Shipped.tree(file).get("tests")) {
        for (JsonNode tried : test.path("promql_expr_test")) {
          Matcher alert = ALERT.matcher(tried.get("expr").asText());
          if (alert.find()) {
            (tried.get("exp_samples").isEmpty() ? quiet : firing).add(alert.group(1));
          }
        }
        for (JsonNode tried : test.path("alert_rule_test")) {
          (tried.get("exp_alerts").isEmpty() ? quiet : firing).add(tried.get("alertname").asText());
        }
      }
    }
    List<String> alerts = Shipped.alerts().stream().map(Rule::name).toList();
    assertThat(firing).containsExactlyInAnyOrderElementsOf(alerts);
    assertThat(quiet).containsExactlyInAnyOrderElementsOf(alerts);
  }

  @Test
  void prometheusConfiguration_isValid() throws IOException, InterruptedException {
    passes("promtool", "check", "config", Shipped.FOLDER.resolve("prometheus.yaml").toString());
  }

  @Test
  void alertmanagerConfiguration_isValid() throws IOException, InterruptedException {
    passes("amtool", "check-config", Shipped.FOLDER.resolve("alertmanager.yaml").toString());
  }

  @Test
  void tableOfAlerts_inTheReadme_isThatOfTheRules() throws IOException {
    String table =
        Shipped.alerts().stream()
            .map(
                rule ->
                    "| `%s` | %s | `%s` | %s |%n"
                        .formatted(
                            rule.name(),
                            rule.whole().at("/labels/severity").asText(),
                            rule.query().replace("|", "\\|"),
                            rule.whole().path("for").asText("at once")))
            .collect(
                Collectors.joining(
                    "", "| alert | severity | when | for |\n|---|---|---|---|\n", ""));
    Generated.file(Shipped.FOLDER.resolve("README.md")).withSection("alerts", table).check();
  }
}
