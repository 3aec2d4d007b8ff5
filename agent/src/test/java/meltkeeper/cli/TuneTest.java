package meltkeeper.cli;

import static meltkeeper.cli.SimulatedRecording.at;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import meltkeeper.jam.sim.Episode;
import meltkeeper.jam.sim.Fault;
import meltkeeper.jam.sim.Truth;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Limits of the jam watch tried on recordings of simulated printers. */
class TuneTest {

  private static final long CLOGGING = 5_000_001;
  private static final long HEALTHY = 5_000_002;

  @TempDir private static Path shared = Path.of("");
  private static Truth clogging = new Truth(0, 0, 0, 0, 0);
  private static Truth healthy = new Truth(0, 0, 0, 0, 0);

  @TempDir private Path folder = Path.of("");
  private final StringWriter out = new StringWriter();
  private final StringWriter err = new StringWriter();
  private Path clog = Path.of("");
  private Path health = Path.of("");

  @BeforeAll
  static void record() throws IOException {
    clogging =
        SimulatedRecording.write(
            shared.resolve("clog.jsonl.gz"), "wren", new Episode(CLOGGING, Fault.CLOG, 2));
    healthy =
        SimulatedRecording.write(
            shared.resolve("health.jsonl.gz"), "heron", new Episode(HEALTHY, Fault.NONE, 5));
  }

  @BeforeEach
  void copy() throws IOException {
    Files.writeString(folder.resolve("meltkeeper.yaml"), SimulatedRecording.CONFIGURATION);
    clog = Files.copy(shared.resolve("clog.jsonl.gz"), folder.resolve("clog.jsonl.gz"));
    health = Files.copy(shared.resolve("health.jsonl.gz"), folder.resolve("health.jsonl.gz"));
    note(clog, "printer,began,stalled,note", "wren," + began() + "," + found() + ",found late");
    note(health, "printer,stalled");
  }

  private static void note(Path recording, String... lines) throws IOException {
    Files.write(Path.of(recording + ".jams.csv"), List.of(lines));
  }

  private static Instant began() {
    return at(clogging.onsetSeconds());
  }

  /** Five minutes after it stalled somebody came by. */
  private static Instant found() {
    return at(clogging.stallSeconds() + 300);
  }

  private int replay(String... args) {
    out.getBuffer().setLength(0);
    err.getBuffer().setLength(0);
    List<String> all =
        new ArrayList<>(
            List.of("replay", "--config", folder.resolve("meltkeeper.yaml").toString()));
    all.addAll(Arrays.asList(args));
    return Main.run(
        new PrintWriter(out, true), new PrintWriter(err, true), all.toArray(String[]::new));
  }

  private JsonNode json(String... args) throws IOException {
    assertThat(replay(args)).as(err.toString()).isZero();
    return new ObjectMapper().readTree(out.toString());
  }

  @Test
  void tune_withAJamNoted_countsItsLeadFromWhatReplayWarnsTo_theStallInTheRecording()
      throws IOException {
    JsonNode plain = json("--json", clog.toString());
    Instant warned = Instant.parse(plain.at("/printers/wren/hot_ends/0/warnings/0/at").asText());

    JsonNode tuned = json("--tune", "300h,1000h", "--json", clog.toString());

    JsonNode jam = tuned.at("/jams/0");
    Instant stalled = Instant.parse(jam.at("/stalled").asText());
    assertThat(jam.at("/stall_shown").asBoolean()).isTrue();
    assertThat(stalled)
        .as("the minutes of the recording and of the simulator may lie across each other")
        .isBetween(at(clogging.stallSeconds() - 60), at(clogging.stallSeconds() + 60));
    double lead = Duration.between(warned, stalled).toMillis() / 60e3;
    assertThat(lead).isPositive();
    assertThat(jam.at("/alarms/1/lead_minutes").asDouble()).isCloseTo(lead, within(1e-3));
    JsonNode limit = tuned.at("/limits/1");
    assertThat(limit.at("/false_alarm_every_hours").asDouble()).isEqualTo(1000);
    assertThat(limit.at("/known_jams").asInt()).isOne();
    assertThat(limit.at("/warned_before_stall").asInt()).isOne();
    assertThat(limit.at("/called_within_30_seconds").asInt()).isOne();
    assertThat(limit.at("/called_within_5_minutes").asInt()).isOne();
    assertThat(limit.at("/lead_minutes/p50").asDouble()).isCloseTo(lead, within(1e-3));
    assertThat(limit.at("/false_alarms").asInt()).isZero();
    assertThat(tuned.at("/limits/0/lead_minutes/p50").asDouble()).isGreaterThan(lead - 1e-3);
    assertThat(tuned.at("/lines")).isEqualTo(plain.at("/lines"));
    assertThat(tuned.at("/rejected")).isEqualTo(plain.at("/rejected"));
  }

  @Test
  void tune_overSeveralRecordings_countsPrintersWithoutJamsAsPrinting() throws IOException {
    JsonNode tuned = json("--tune", "--json", health.toString(), clog.toString());

    assertThat(tuned.at("/limits")).hasSize(5);
    assertThat(tuned.at("/limits/4/known_jams").asInt()).isOne();
    double printed =
        healthy.printingSeconds() / 3600
            + clogging.printingSeconds() / 3600
            - (clogging.stallSeconds() + 600 - clogging.onsetSeconds()) / 3600;
    assertThat(tuned.at("/printing_hours").asDouble())
        .as("stretches of five minutes are counted whole")
        .isBetween(0.9 * printed, printed + 1);
    assertThat(tuned.at("/advice/because").asText())
        .contains("warns of 1 of 1 jams before the stall", "1 known jam:", "too few hours");
  }

  @Test
  void tune_withAJamThatNobodyNoted_countsAFalseAlarm() throws IOException {
    note(clog, "printer,stalled");
    JsonNode tuned = json("--tune=1000h", "--json", clog.toString());
    assertThat(tuned.at("/limits/0/false_alarms").asInt()).isOne();
    assertThat(tuned.at("/limits/0/lead_minutes/p50").isNull()).isTrue();
    assertThat(tuned.at("/advice/false_alarm_every_hours").isNull()).isTrue();
    assertThat(tuned.at("/advice/because").asText()).startsWith("No jam is noted");
  }

  @Test
  void tune_asText_showsLimitsJamsAndAdvice() throws IOException {
    assertThat(replay("--tune", "300h,1000h", clog.toString())).isZero();
    assertThat(out.toString())
        .containsPattern("false-alarm-every +jams +warned +by 30 s +by 5 min")
        .containsPattern(" 300h +1 +1 +1 +1 +[0-9.]+ +[0-9.]+ +0 +0\\.0 \\(0\\.0-[0-9.]+\\)")
        .containsPattern(
            "wren +2026-03-02 [0-9:]+ +[0-9.]+ min before +[0-9.]+ min before +found late")
        .contains("1000h fits best of those tried")
        .contains("lines read");
  }

  @Test
  void tune_withStore_isRefused() {
    assertThat(replay("--tune", "--store", clog.toString())).isEqualTo(2);
    assertThat(err.toString()).startsWith("--tune: found \"--store\"; allowed: one of the two");
  }

  @Test
  void tune_ofWhatIsNoInterval_isRefused() {
    assertThat(replay("--tune", "300x,1000h,0h", clog.toString())).isEqualTo(2);
    assertThat(err.toString().lines())
        .containsExactly(
            "--tune: found \"300x\"; allowed: intervals from 1h to 100000h, as 300h,1000h",
            "--tune: found \"0h\"; allowed: intervals from 1h to 100000h, as 300h,1000h");
  }

  @Test
  void tune_withoutATableOfJams_saysWhereToWriteOne() throws IOException {
    Files.delete(Path.of(clog + ".jams.csv"));
    assertThat(replay("--tune", clog.toString(), health.toString())).isEqualTo(2);
    assertThat(err.toString().strip())
        .isEqualTo(
            clog
                + ": --tune: found \"no file "
                + clog
                + ".jams.csv\"; allowed: a table of the jams beside each recording; write one;"
                + " when nothing jammed, its header alone: printer,stalled");
  }

  @Test
  void tune_ofRecordingsOutOfOrder_isRefused_forTheWatchWouldNotSeeThem() {
    assertThat(replay("--tune", clog.toString(), health.toString(), clog.toString())).isEqualTo(2);
    assertThat(err.toString().lines()).hasSize(1);
    assertThat(err.toString())
        .startsWith(clog + ": RECORDING: found \"2026-03-02T06:00:0")
        .contains("allowed: readings of wren after those of the recordings before it: ")
        .contains("name recordings in order of time, and each once");
  }

  @Test
  void tune_ofAJamOutsideTheRecording_saysWhatIsInside() throws IOException {
    note(
        clog,
        "printer,stalled",
        "wren,2026-03-01T08:00",
        "heron,2026-03-02T08:00",
        "wren," + found());
    assertThat(replay("--tune", clog.toString())).isEqualTo(2);
    assertThat(err.toString().lines()).hasSize(2);
    assertThat(err.toString().lines().findFirst().orElseThrow())
        .startsWith(
            clog
                + ".jams.csv:2: stalled: found \"2026-03-01T08:00\"; allowed: a time at which wren"
                + " is heard in this recording: 2026-03-02T06:00:0")
        .endsWith("a time without an offset is by the shop's clock");
    assertThat(err.toString())
        .contains(
            ".jams.csv:3: stalled", "heron is not; drop the line, or see what replay rejects");
  }
}
