package meltkeeper.cli;

import static org.assertj.core.api.Assertions.assertThat;

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

/** The commands as a shop types them, over a real configuration and a real store. */
class PartCommandTest {

  private static final String CONFIG =
      """
      store: jdbc:sqlite:shop.db
      zone: Europe/Vienna
      printers:
        heron: { from: { serial: /dev/ttyUSB0 } }
        ibis: { from: { serial: /dev/ttyUSB1 } }
      kinds:
        liner: { price: 4.50, swap-minutes: 15 }
      costs: { currency: EUR, labour-per-hour: 25, jam: 18 }
      """;

  @TempDir private Path shop;
  private String out = "";
  private String err = "";

  @BeforeEach
  void configure() throws IOException {
    Files.writeString(shop.resolve("meltkeeper.yaml"), CONFIG);
  }

  private int meltkeeper(String... args) {
    StringWriter written = new StringWriter();
    StringWriter complained = new StringWriter();
    String[] all = java.util.Arrays.copyOf(args, args.length + 2);
    all[args.length] = "--config";
    all[args.length + 1] = shop.resolve("meltkeeper.yaml").toString();
    int code = Main.run(new PrintWriter(written, true), new PrintWriter(complained, true), all);
    out = written.toString();
    err = complained.toString();
    return code;
  }

  @Test
  void swap_isToldAndListed() {
    assertThat(meltkeeper("part", "add", "liner")).as(() -> err).isZero();
    assertThat(out).isEqualTo("L-001 is known as a new liner." + System.lineSeparator());
    assertThat(meltkeeper("part", "fit", "L-001", "--printer", "heron", "--at", "2026-03-02T08:00"))
        .as(() -> err)
        .isZero();
    assertThat(out)
        .contains("L-001 was fitted on heron on 2026-03-02 08:00.")
        .contains("nothing was heard of hot end 0 of heron yet")
        .contains("Hot metal burns: let it cool, or hold it with tools.");
    assertThat(meltkeeper("part", "list")).isZero();
    assertThat(out.lines())
        .containsExactly(
            "Part   Kind   Variant  Standing  Since             Hot h  Most at °C  Filament m",
            "L-001  liner           on heron  2026-03-02 08:00    0.0                     0.0");
    assertThat(
            meltkeeper(
                "part",
                "remove",
                "--printer",
                "heron",
                "--kind",
                "liner",
                "--because",
                "jam",
                "--at",
                "2026-03-03 09:30"))
        .as(() -> err)
        .isZero();
    assertThat(meltkeeper("part", "show", "L-001")).isZero();
    assertThat(out)
        .contains("L-001, liner: jam")
        .contains("2026-03-03 09:30  taken off because of jam");
  }

  @Test
  void stayThatIsOver_isToldAtOnce() {
    meltkeeper("part", "add", "liner");
    assertThat(
            meltkeeper(
                "part",
                "fit",
                "L-001",
                "--printer",
                "heron",
                "--at",
                "2026-01-05T08:00",
                "--until",
                "2026-02-01T09:00",
                "--because",
                "jam",
                "--not-this-part",
                "--prior-hours",
                "120",
                "--prior-temperature",
                "220"))
        .as(() -> err)
        .isZero();
    meltkeeper("part", "show", "L-001");
    assertThat(out)
        .contains("L-001, liner: excused")
        .contains("Hot 120.0 h, of these 120.0 h told")
        .contains("fitted on heron           after 120 ± 0 h at 220 °C elsewhere")
        .contains("taken off because of jam  not the fault of this part");
  }

  @Test
  void refusal_tellsEveryFaultAndChangesNothing() {
    meltkeeper("part", "add", "liner");
    assertThat(meltkeeper("part", "fit", "L-01", "--printer", "hern")).isEqualTo(2);
    assertThat(err.lines())
        .hasSize(2)
        .anyMatch(line -> line.contains("did you mean L-001?"))
        .anyMatch(line -> line.contains("did you mean heron?"));
    assertThat(meltkeeper("part", "remove", "L-001", "--because", "jamm")).isEqualTo(2);
    assertThat(err).contains("did you mean jam?");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "part fit L-001",
        "part remove --because jam",
        "part remove L-001 --kind liner --because jam",
        "part fit L-001 --printer heron --until 2026-02-01T09:00",
        "part fit L-001 --printer heron --prior-hours 12",
        "part clean L-001",
        "part show",
        "report --format pdf"
      })
  void wrongUsage_isToldInALine(String line) {
    assertThat(meltkeeper(line.split(" "))).isEqualTo(2);
    assertThat(err).startsWith("meltkeeper: ").contains("--help");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"", "add", "fit", "remove", "clean", "retire", "undo", "list", "show", "import"})
  void help_readsWellAndGivesAnExample(String command) {
    assertThat(meltkeeper(("part " + command + " --help").split(" +"))).isZero();
    assertThat(out).contains("Usage: meltkeeper part").containsPattern("meltkeeper part \\w+ \\S+");
  }

  @Test
  void cleaningAndRetiring_areNoted_andTakenBack() {
    meltkeeper("part", "add", "liner", "--variant", "ptfe");
    assertThat(meltkeeper("part", "clean", "L-001", "--restores", "0.7")).isZero();
    assertThat(out).contains("Wear eye protection");
    assertThat(meltkeeper("part", "retire", "L-001", "--json")).isZero();
    assertThat(out).startsWith("{\"done\":\"L-001 was retired on ");
    assertThat(meltkeeper("part", "list")).isZero();
    assertThat(out).startsWith("No such part.");
    assertThat(meltkeeper("part", "undo", "L-001")).isZero();
    assertThat(meltkeeper("part", "list", "--json")).isZero();
    assertThat(out)
        .startsWith("{\"parts\":[{\"id\":\"L-001\",\"kind\":\"liner\",\"variant\":\"ptfe\"");
  }

  @Test
  void paper_isTakenIn_andAFaultNamesItsLine() throws IOException {
    Path table = shop.resolve("past.csv");
    Files.writeString(table, "id,kind,ended,temperature,hours\nP-1,liner,jam,215,400\n");
    assertThat(meltkeeper("part", "import", table.toString())).as(() -> err).isZero();
    assertThat(out)
        .isEqualTo(
            "Taken in: parts 1, hot hours 400.0, failed 1, still fitted 0"
                + System.lineSeparator());
    assertThat(meltkeeper("part", "import", table.toString())).isEqualTo(2);
    assertThat(err).startsWith(table + ":2:1: id: found \"P-1\"");
    assertThat(meltkeeper("part", "import", shop.resolve("none.csv").toString())).isEqualTo(2);
    assertThat(err).contains("a file that exists");
    Files.write(table, new byte[] {(byte) 0xE4, (byte) 0xF6});
    assertThat(meltkeeper("part", "import", table.toString())).isEqualTo(2);
    assertThat(err).contains("save the table as CSV in UTF-8");
  }

  @Test
  void report_isPrintedInEveryFormat() {
    meltkeeper("part", "add", "liner");
    assertThat(meltkeeper("report", "--since", "7d")).as(() -> err).isZero();
    assertThat(out).contains("Costs: 0.00 EUR");
    assertThat(meltkeeper("report", "--format", "csv")).isZero();
    assertThat(out).startsWith("printer,hot_end,since,until,hot_hours");
    assertThat(meltkeeper("report", "--json")).isZero();
    assertThat(out).startsWith("{\"since\":\"");
    assertThat(meltkeeper("report", "--format", "html")).isZero();
    assertThat(out).startsWith("<!DOCTYPE html>").contains("heron");
    assertThat(meltkeeper("report", "--since", "someday")).isEqualTo(2);
    assertThat(err).startsWith("--since: found \"someday\"");
  }
}
