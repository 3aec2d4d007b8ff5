package meltkeeper.dashboards;

import com.fasterxml.jackson.annotation.JsonProperty;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.dataformat.yaml.YAMLFactory;
import com.fasterxml.jackson.datatype.jdk8.Jdk8Module;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** The files in {@code dashboards/}, as they are shipped. */
final class Shipped {

  static final Path FOLDER = Path.of("../dashboards").toAbsolutePath().normalize();
  static final Path ALERTS = FOLDER.resolve("rules/alerts.yaml");
  static final Path RECORDING = FOLDER.resolve("rules/recording.yaml");
  static final Path CONSOLES = FOLDER.resolve("consoles");

  private static final ObjectMapper YAML =
      new ObjectMapper(new YAMLFactory())
          .registerModule(new Jdk8Module())
          .enable(DeserializationFeature.FAIL_ON_UNKNOWN_PROPERTIES);

  private Shipped() {}

  /** {@code panels.yaml}. */
  record Panels(List<Board> dashboards) {}

  record Board(String file, String title, List<Panel> panels) {}

  /**
   * A panel.
   *
   * @param wide in 24ths of the page
   * @param mayBeEmpty where a healthy shop may have nothing to show
   */
  record Panel(
      String title,
      Form form,
      Optional<Unit> unit,
      Optional<Words> words,
      Optional<Double> limit,
      Optional<Integer> wide,
      String say,
      List<Line> lines,
      @JsonProperty("may-be-empty") boolean mayBeEmpty) {}

  record Line(String ask, String name) {}

  /** How a panel looks. */
  enum Form {
    @JsonProperty("states")
    STATES,
    @JsonProperty("lines")
    LINES,
    @JsonProperty("bars")
    BARS,
    @JsonProperty("figures")
    FIGURES
  }

  /** What its numbers are. */
  enum Unit {
    @JsonProperty("hours")
    HOURS,
    @JsonProperty("days")
    DAYS,
    @JsonProperty("seconds")
    SECONDS,
    @JsonProperty("celsius")
    CELSIUS,
    @JsonProperty("share")
    SHARE,
    @JsonProperty("meters")
    METERS,
    @JsonProperty("bytes")
    BYTES
  }

  /** What its states are called. */
  enum Words {
    @JsonProperty("level")
    LEVEL,
    @JsonProperty("yes-no")
    YES
  }

  /** A rule, of either kind. */
  record Rule(String name, String query, JsonNode whole) {}

  static Panels panels() throws IOException {
    return YAML.readValue(FOLDER.resolve("panels.yaml").toFile(), Panels.class);
  }

  static List<Rule> alerts() throws IOException {
    return rules(ALERTS, "alert");
  }

  static List<Rule> recorded() throws IOException {
    return rules(RECORDING, "record");
  }

  private static List<Rule> rules(Path file, String kind) throws IOException {
    List<Rule> rules = new ArrayList<>();
    for (JsonNode group : tree(file).get("groups")) {
      for (JsonNode rule : group.get("rules")) {
        rules.add(new Rule(rule.get(kind).asText(), rule.get("expr").asText(), rule));
      }
    }
    return rules;
  }

  static JsonNode tree(Path file) throws IOException {
    return YAML.readTree(file.toFile());
  }

  static String consolePage() throws IOException {
    return Files.readString(CONSOLES.resolve("meltkeeper.html"));
  }

  /** The files that try the rules. */
  static List<Path> ruleTests() throws IOException {
    try (var files = Files.list(FOLDER.resolve("rules/tests"))) {
      return files.sorted().toList();
    }
  }
}
