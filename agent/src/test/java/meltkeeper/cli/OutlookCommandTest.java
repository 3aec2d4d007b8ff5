package meltkeeper.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The two questions about what lies ahead, as a shop types them. */
class OutlookCommandTest {

  private static final String CONFIG =
      """
      store: jdbc:sqlite:shop.db
      zone: Europe/Vienna
      printers:
        heron: { from: { serial: /dev/ttyUSB0 }, hot-end: { hot-above: 160 } }
        ibis: { from: { serial: /dev/ttyUSB1 } }
      kinds:
        liner:
          price: 4.50
          swap-minutes: 15
          belief: { life-hours: 600, spread: 0.35, shape: 2.5, halving: 10, at: 220 }
      costs: { currency: EUR, labour-per-hour: 25, jam: 18 }
      """;

  /** Six lives at 220 °C; data B of the posterior that PosteriorTwoUnknownsTest names. */
  private static final String PAST =
      """
      id,kind,ended,temperature,hours
      L-1,liner,jam,220,580
      L-2,liner,jam,220,655
      L-3,liner,worn,220,490
      L-4,liner,precaution,220,600
      L-5,liner,precaution,220,600
      L-6,liner,still-fitted,220,310
      """;

  @TempDir private Path shop;
  private String out = "";
  private String err = "";

  @BeforeEach
  void openShop() throws IOException {
    Files.writeString(shop.resolve("meltkeeper.yaml"), CONFIG);
    Files.writeString(shop.resolve("past.csv"), PAST);
  }

  private int meltkeeper(String line) {
    StringWriter written = new StringWriter();
    StringWriter complained = new StringWriter();
    String[] words = (line + " --config " + shop.resolve("meltkeeper.yaml")).split(" ");
    int code = Main.run(new PrintWriter(written, true), new PrintWriter(complained, true), words);
    out = written.toString();
    err = complained.toString();
    return code;
  }

  private JsonNode json() throws IOException {
    return new ObjectMapper().readTree(out);
  }

  private void takeIn() {
    assertThat(meltkeeper("part import " + shop.resolve("past.csv"))).as(() -> err).isZero();
    assertThat(meltkeeper("part fit L-6 --printer heron")).as(() -> err).isZero();
  }

  @Test
  void lifeJson_holdsWhatIsPromised() throws IOException {
    takeIn();
    assertThat(meltkeeper("life --kind liner --json")).as(() -> err).isZero();
    JsonNode liner = json().at("/kinds/liner");
    assertThat(liner.at("/reference_temperature").asDouble()).isEqualTo(220);
    assertThat(liner.at("/parts").asInt()).isEqualTo(6);
    assertThat(liner.at("/failures").asInt()).isEqualTo(3);
    // Computed by two dense grids of different rule, size and range; relative tolerance 1e-3.
    assertThat(liner.at("/life_hours/p5").asDouble()).isCloseTo(550.186811, within(0.55));
    assertThat(liner.at("/life_hours/p50").asDouble()).isCloseTo(681.805992, within(0.68));
    assertThat(liner.at("/life_hours/p95").asDouble()).isCloseTo(923.731521, within(0.92));
    assertThat(liner.at("/life_hours/mean").asDouble()).isCloseTo(702.343270, within(0.07));
    assertThat(liner.at("/shape/p50").asDouble()).isCloseTo(3.44157862, within(0.0035));
    assertThat(liner.at("/halving/mean").asDouble()).isCloseTo(10.0794455, within(1e-3));
    assertThat(liner.at("/advice/replace_at").asDouble()).isCloseTo(468.933472, within(0.5));
    assertThat(liner.at("/advice/cost_per_1000_hours").asDouble())
        .isCloseTo(34.7780774, within(0.0035));
    assertThat(liner.at("/advice/saving_per_1000_hours").isNumber()).isTrue();
    assertThat(liner.at("/advice/because").asText()).contains("28.75");
    assertThat(liner.at("/mean_life_hours/mean").asDouble()).isCloseTo(633.6146, within(0.07));
  }

  @Test
  void riskJson_holdsWhatIsPromised() throws IOException {
    takeIn();
    assertThat(
            meltkeeper(
                "risk --printer heron --hours 20 --temperature 220 --hours 4 --temperature 237"
                    + " --at-most 5% --json"))
        .as(() -> err)
        .isZero();
    JsonNode risk = json();
    assertThat(risk.at("/printer").asText()).isEqualTo("heron");
    assertThat(risk.at("/hours").asDouble()).isEqualTo(24);
    assertThat(risk.at("/parts/0/id").asText()).isEqualTo("L-6");
    assertThat(risk.at("/parts/0/age_hours").asDouble()).isCloseTo(310, within(1e-6));
    double mean = risk.at("/parts/0/failure_probability/mean").asDouble();
    assertThat(mean).isBetween(0.001, 0.1);
    assertThat(risk.at("/parts/0/failure_probability/p5").asDouble()).isLessThan(mean);
    assertThat(risk.at("/parts/0/failure_probability/p95").asDouble()).isGreaterThan(mean);
    assertThat(risk.at("/any").asDouble()).isCloseTo(mean, within(1e-12));
    assertThat(risk.at("/longest_hours").asDouble()).isPositive();
    assertThat(risk.at("/advice").asText()).startsWith("start: ");
  }

  @Test
  void life_readsWithoutStatistics() {
    takeIn();
    assertThat(meltkeeper("life")).as(() -> err).isZero();
    assertThat(out)
        .contains("liner: 6 parts, 3 failures; hours count as hours at 220 °C")
        .contains("replace   at 469 h, which costs 34.78 EUR per 1000 h")
        .contains("how sure")
        .contains("all parts ran at one temperature")
        .contains("nozzle: no part has run yet; believed to last 1200 h at 220 °C")
        .contains("so there is no duty");
    assertThat(meltkeeper("life --kind liner --explain")).isZero();
    assertThat(out).contains("Believed at first").contains("Check: 3 failures were seen");
  }

  @Test
  void risk_saysWhatToDo() {
    takeIn();
    assertThat(meltkeeper("risk --printer heron --hours 400 --temperature 220")).isZero();
    assertThat(out).startsWith("Swap L-6 first: ").contains("Very likely between");
    assertThat(meltkeeper("risk --printer ibis --hours 4 --temperature 220")).isZero();
    assertThat(out).startsWith("No part is known to be on ibis");
    assertThat(meltkeeper("risk --printer heron --hours 4 --temperature 155")).isZero();
    assertThat(out).contains("hours at 155.0 °C do not count: hot is above 160.0 °C");
  }

  @Test
  void gcodeFile_isReckonedFromItsOwnMoves() throws IOException {
    takeIn();
    Path file = shop.resolve("labels.gcode");
    Files.writeString(file, "M109 S225\nM83\nG1 X100 E4 F3000\nG4 S35900\nM104 S0\n");
    assertThat(meltkeeper("risk --printer heron --gcode " + file + " --json"))
        .as(() -> err)
        .isZero();
    // 100 s of heating, 2.03 s of moving, a dwell: ten hours, of which 32.5 s from 25 °C to 160 °C
    // (the threshold of this printer) are none of it.
    assertThat(json().at("/hours").asDouble() * 3600).isCloseTo(36_002, within(0.1));
    assertThat(json().at("/notes/0").asText())
        .isEqualTo(
            "labels.gcode was reckoned to take 10.0 h, 0.0 h of it laying filament, up to 225 °C");
    double byFile = json().at("/any").asDouble();
    assertThat(meltkeeper("risk --printer heron --hours 9.97 --temperature 225 --json")).isZero();
    assertThat(byFile).isCloseTo(json().at("/any").asDouble(), within(1e-4));
    Files.writeString(file, "G1 X100 E4 F3000\n");
    assertThat(meltkeeper("risk --printer heron --gcode " + file)).isEqualTo(2);
    assertThat(err).contains("no temperature in it");
    Files.writeString(file, "not a file of moves\n");
    assertThat(meltkeeper("risk --printer heron --gcode " + file)).isEqualTo(2);
    assertThat(err).contains("no move in it");
    assertThat(meltkeeper("risk --printer heron --gcode " + shop.resolve("none.gcode")))
        .isEqualTo(2);
    assertThat(err).contains("there is no such file");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "risk --printer heron",
        "risk --printer heron --hours 5",
        "risk --hours 5 --temperature 220",
        "risk --printer heron --hours five --temperature 220",
        "life --kind",
      })
  void wrongUsage_isToldInALine(String line) {
    assertThat(meltkeeper(line)).isEqualTo(2);
    assertThat(err).startsWith("meltkeeper: ").contains("--help");
  }

  @Test
  void faults_areToldAllAtOnce() {
    assertThat(meltkeeper("risk --printer hern --hours -1 --temperature 900 --hot-end 99"))
        .isEqualTo(2);
    assertThat(err)
        .contains("did you mean heron?")
        .contains("--hours: found \"-1.0\"; allowed: above 0, to 10000 h")
        .contains("--temperature: found \"900.0\"; allowed: 0 to 600 °C")
        .contains("hot-end: found \"99\"");
    assertThat(meltkeeper("risk --printer heron --hours 5 --temperature 220 --at-most 5"))
        .isEqualTo(2);
    assertThat(err).contains("--at-most: found \"5\"; allowed: a share above 0% and below 100%");
    assertThat(meltkeeper("life --kind lier")).isEqualTo(2);
    assertThat(err).contains("did you mean liner?");
    assertThat(meltkeeper("life --spares-for soon")).isEqualTo(2);
    assertThat(err).contains("whole days, 1d to 3650d");
  }
}
