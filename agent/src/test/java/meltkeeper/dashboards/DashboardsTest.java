package meltkeeper.dashboards;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import meltkeeper.dashboards.Shipped.Board;
import meltkeeper.dashboards.Shipped.Line;
import meltkeeper.dashboards.Shipped.Panel;
import meltkeeper.dashboards.Shipped.Rule;
import meltkeeper.metrics.Exposition;
import meltkeeper.metrics.FullSight;
import meltkeeper.metrics.Metrics;
import meltkeeper.testing.Generated;
import meltkeeper.testing.Tool;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class DashboardsTest {

  private static final Path GRAFANA = Shipped.FOLDER.resolve("grafana");

  private static Vocabulary vocabulary = new Vocabulary(Map.of(), Set.of());

  @TempDir private Path folder;

  @BeforeAll
  static void scrape() throws IOException {
    try (Metrics metrics = new Metrics(FullSight::of)) {
      vocabulary =
          Vocabulary.of(
              metrics.scrape(Exposition.PROMETHEUS_TEXT),
              Shipped.recorded().stream().map(Rule::name).toList());
    }
  }

  private static List<Panel> panels() throws IOException {
    return Shipped.panels().dashboards().stream().flatMap(b -> b.panels().stream()).toList();
  }

  @Test
  void grafanaFiles_areMadeFromTheDescription() throws IOException {
    Set<String> names = new TreeSet<>();
    for (Board board : Shipped.panels().dashboards()) {
      names.add(board.file() + ".json");
      new Generated(GRAFANA.resolve(board.file() + ".json"), Grafana.dashboard(board)).check();
    }
    try (var files = Files.list(GRAFANA)) {
      assertThat(files.map(file -> file.getFileName().toString()))
          .containsExactlyInAnyOrderElementsOf(names);
    }
  }

  @Test
  void panels_askOnlyForWhatMetricsHas() throws IOException {
    for (Panel panel : panels()) {
      for (Line line : panel.lines()) {
        assertThat(vocabulary.unknownIn(line.ask())).as(panel.title()).isEmpty();
        assertThat(vocabulary.unknownNamesIn(line.name())).as(panel.title()).isEmpty();
      }
    }
  }

  @Test
  void rules_askOnlyForWhatMetricsHas() throws IOException {
    List<Rule> rules = new ArrayList<>(Shipped.alerts());
    rules.addAll(Shipped.recorded());
    for (Rule rule : rules) {
      assertThat(vocabulary.unknownIn(rule.query())).as(rule.name()).isEmpty();
      assertThat(vocabulary.unknownNamesIn(rule.whole().path("annotations").toString()))
          .as(rule.name())
          .isEmpty();
    }
  }

  @Test
  void consolePage_asksOnlyForWhatMetricsHas() throws IOException {
    assertThat(vocabulary.unknownIn(Shipped.consolePage())).isEmpty();
  }

  @Test
  void vocabulary_ofAMisspeltQuery_tellsWhatNobodyHas() {
    assertThat(
            vocabulary.unknownIn(
                "sum by (bird) (meltkeeper_jam_levels) > meltkeeper_jam_level{kind=\"liner\"}"))
        .containsExactly(
            "the metric meltkeeper_jam_levels",
            "the label kind of meltkeeper_jam_level",
            "the label bird");
    assertThat(vocabulary.unknownNamesIn("{{printer}} {{bird}}")).containsExactly("bird");
  }

  @Test
  void queriesOfPanels_arePromql() throws IOException, InterruptedException {
    StringBuilder rules = new StringBuilder("groups:\n- name: panels\n  rules:\n");
    int count = 0;
    for (Panel panel : panels()) {
      for (Line line : panel.lines()) {
        rules.append("  - { record: \"panel:").append(count++).append("\", expr: '");
        rules.append(line.ask().replace("$printer", ".*").replace("'", "''")).append("' }\n");
      }
    }
    Path file = Files.writeString(folder.resolve("panels.yaml"), rules);
    Tool.Answer answer = Tool.find("promtool").run("check", "rules", file.toString());
    assertThat(answer.code()).as(answer.text()).isZero();
    assertThat(answer.text()).contains(count + " rules found");
  }
}
