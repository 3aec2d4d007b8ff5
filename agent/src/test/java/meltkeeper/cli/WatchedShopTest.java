package meltkeeper.cli;

import static org.assertj.core.api.Assertions.assertThat;

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
import java.util.List;
import meltkeeper.config.ConfigReader;
import meltkeeper.config.Settings;
import meltkeeper.demo.Message;
import meltkeeper.demo.PrinterSetup;
import meltkeeper.demo.SimulatedPrinter;
import meltkeeper.demo.Telling;
import meltkeeper.demo.Trouble;
import meltkeeper.jam.Finding;
import meltkeeper.jam.Level;
import meltkeeper.part.Moments;
import meltkeeper.pipeline.Calling;
import meltkeeper.pipeline.HotEndLive;
import meltkeeper.pipeline.Intake;
import meltkeeper.protocol.Received;
import meltkeeper.source.recording.RecordingWriter;
import meltkeeper.store.MemoryStore;
import meltkeeper.store.Store;
import meltkeeper.store.sql.Stores;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The jam watch on its way from telemetry to whoever is told, over a simulated printer. */
class WatchedShopTest {

  private static final long START = Moments.nanos(Instant.parse("2026-03-02T08:00:00Z"));
  private static final Duration EVERY = Duration.ofSeconds(2);

  private static final String CONFIG =
      """
      store: jdbc:sqlite:shop.db
      brokers: { shop: { url: "tcp://127.0.0.1:1883" } }
      mappings:
        status-json:
          - topic: plant/{printer}/status
            time: { at: /at, format: iso }
            read:
              hot-end-temperature: /hotend/now
              hot-end-target: /hotend/set
              heater-duty: { at: /hotend/pwm, scale: 0.0078740157 }
              filament-commanded: /feed/asked
              filament-measured: /feed/seen
              job-state: { at: /job/state, words: { RUN: printing, HOLD: paused, REST: idle } }
              job: /job/name
              material: /spool/material
        temperature-only:
          - topic: plant/{printer}/status
            time: { at: /at, format: iso }
            read:
              hot-end-temperature: /hotend/now
              job-state: { at: /job/state, words: { RUN: printing, HOLD: paused, REST: idle } }
      printers:
        kestrel: { from: { broker: shop, mapping: status-json } }
        ibis: { from: { broker: shop, mapping: temperature-only } }
      """;

  @TempDir private Path shop;
  private Settings settings = settings();

  private static Settings settings() {
    return ConfigReader.read("the test", CONFIG)
        .fold(
            valid -> valid,
            faults -> {
              throw new AssertionError(faults.toString());
            });
  }

  @BeforeEach
  void configure() throws IOException {
    Files.writeString(shop.resolve("meltkeeper.yaml"), CONFIG);
  }

  private static List<Received> told(PrinterSetup setup, Duration time) {
    SimulatedPrinter printer = new SimulatedPrinter(setup);
    List<Received> told = new ArrayList<>();
    for (long at = EVERY.toNanos(); at <= time.toNanos(); at += EVERY.toNanos()) {
      printer.advanceTo(START + at);
      for (Message message : Telling.STATUS_JSON.messages(setup.name(), printer.state())) {
        told.add(message.receivedFrom("shop"));
      }
    }
    return told;
  }

  private Path record(String name, List<Received> told) throws IOException {
    Path recording = shop.resolve(name);
    try (RecordingWriter writer = new RecordingWriter(recording)) {
      told.forEach(writer::accept);
    }
    return recording;
  }

  private static List<Received> clogging() {
    return clogging(Duration.ofHours(1), Duration.ofMinutes(140));
  }

  private static List<Received> clogging(Duration closesIn, Duration time) {
    Trouble clog = new Trouble.Clog(START + Duration.ofHours(1).toNanos(), closesIn.toNanos());
    return told(PrinterSetup.usual("kestrel", 4, START).having(clog), time);
  }

  private Intake intake(Store store, List<Finding> findings) {
    Intake intake =
        new Intake(
            Joints.decoders(settings),
            Joints.limits(settings),
            Joints.watching(settings),
            store,
            Calling.NOBODY);
    intake.onFinding(findings::add);
    return intake;
  }

  @Test
  void closingNozzle_isNarrowingBeforeItIsStalled() {
    List<Finding> findings = new ArrayList<>();
    Intake intake = intake(new MemoryStore(), findings);
    clogging().forEach(intake::accept);
    assertThat(findings).isNotEmpty();
    assertThat(findings.get(0).level()).isEqualTo(Level.NARROWING);
    assertThat(findings.get(0).atNanos()).isGreaterThan(START + Duration.ofHours(1).toNanos());
    assertThat(findings).extracting(Finding::level).contains(Level.STALLED);
    HotEndLive live = intake.live().hotEnds().get(0);
    assertThat(live.watch().because()).isNotBlank();
  }

  @Test
  void nozzleThatIsCleared_isClearAgain() {
    Trouble clog =
        new Trouble.Clog(
            START + Duration.ofMinutes(12).toNanos(),
            Duration.ofHours(1).toNanos(),
            START + Duration.ofMinutes(90).toNanos());
    List<Finding> findings = new ArrayList<>();
    Intake intake = intake(new MemoryStore(), findings);
    told(PrinterSetup.usual("kestrel", 4, START).having(clog), Duration.ofHours(4))
        .forEach(intake::accept);
    assertThat(findings)
        .extracting(Finding::level)
        .containsSubsequence(Level.NARROWING, Level.STALLED, Level.CLEAR);
    assertThat(intake.live().hotEnds().get(0).watch().level()).isEqualTo(Level.CLEAR);
  }

  @Test
  void healthyPrinter_isNeverCalled() {
    List<Finding> findings = new ArrayList<>();
    Intake intake = intake(new MemoryStore(), findings);
    told(PrinterSetup.usual("kestrel", 7, START), Duration.ofHours(12)).forEach(intake::accept);
    assertThat(findings).isEmpty();
    assertThat(intake.live().hotEnds().get(0).watch().level()).isEqualTo(Level.CLEAR);
  }

  @Test
  void agentStartedAnew_findsTheSame() {
    List<Received> told = clogging();
    List<Finding> whole = new ArrayList<>();
    Intake one = intake(new MemoryStore(), whole);
    told.forEach(one::accept);
    Store store = new MemoryStore();
    List<Finding> split = new ArrayList<>();
    int third = told.size() / 3;
    for (int part = 0; part < 3; part++) {
      Intake intake = intake(store, split);
      told.subList(part * third, part == 2 ? told.size() : (part + 1) * third)
          .forEach(intake::accept);
      intake.commitAtTheEnd();
    }
    assertThat(split).isEqualTo(whole);
  }

  @Test
  void printerThatTellsTooLittle_isBlind_andToldTheCure() {
    List<Finding> findings = new ArrayList<>();
    Intake intake = intake(new MemoryStore(), findings);
    told(PrinterSetup.usual("ibis", 2, START), Duration.ofHours(1)).forEach(intake::accept);
    assertThat(findings).extracting(Finding::level).contains(Level.BLIND);
    HotEndLive live = intake.live().hotEnds().get(0);
    assertThat(live.blindNanos()).isGreaterThan(Duration.ofMinutes(5).toNanos());
    assertThat(findings.get(0).because()).contains("filament-commanded");
  }

  /**
   * The bore closes slowly from the second hour on, and the feed slips when the agent first hears
   * of it: usual for all that a new one knows.
   */
  @Test
  void agentOnAStoreThatOldRecordingsTaught_warnsSoonerThanANewOne() throws IOException {
    List<Received> told = clogging(Duration.ofHours(6), Duration.ofMinutes(250));
    List<Received> later =
        told.subList((int) Duration.ofMinutes(210).dividedBy(EVERY), told.size());
    Path database = shop.resolve("taught.db");
    Files.writeString(
        shop.resolve("meltkeeper.yaml"), CONFIG.replace("shop.db", database.toString()));
    Path recording =
        record("morning.jsonl.gz", told.subList(0, (int) Duration.ofHours(1).dividedBy(EVERY)));

    int code =
        Main.run(
            new PrintWriter(new StringWriter(), true),
            new PrintWriter(new StringWriter(), true),
            "replay",
            "--config",
            shop.resolve("meltkeeper.yaml").toString(),
            "--store",
            recording.toString());

    assertThat(code).isZero();
    List<Finding> taught = new ArrayList<>();
    try (Store store = Stores.open("jdbc:sqlite:" + database)) {
      later.forEach(intake(store, taught)::accept);
    }
    List<Finding> untaught = new ArrayList<>();
    later.forEach(intake(new MemoryStore(), untaught)::accept);
    assertThat(taught.get(0).level()).isEqualTo(Level.NARROWING);
    assertThat(taught.get(0).minutesToStall()).isPresent();
    assertThat(taught.get(0).atNanos())
        .as("soon after it hears of the printer")
        .isLessThan(START + Duration.ofMinutes(215).toNanos());
    assertThat(untaught.get(0).atNanos()).isGreaterThan(taught.get(0).atNanos());
  }

  @Test
  void replay_tellsWarnings_andBlindTime() throws IOException {
    Path recording = record("morning.jsonl.gz", clogging());
    StringWriter out = new StringWriter();
    int code =
        Main.run(
            new PrintWriter(out, true),
            new PrintWriter(new StringWriter(), true),
            "replay",
            "--config",
            shop.resolve("meltkeeper.yaml").toString(),
            recording.toString(),
            "--json");
    assertThat(code).isZero();
    JsonNode hotEnd =
        new ObjectMapper().readTree(out.toString()).at("/printers/kestrel/hot_ends/0");
    assertThat(hotEnd.at("/blind_seconds").isNumber()).isTrue();
    JsonNode first = hotEnd.at("/warnings/0");
    assertThat(first.at("/level").asText()).isEqualTo("narrowing");
    assertThat(first.at("/at").asText()).startsWith("2026-03-02T09:");
    assertThat(first.at("/detector").asText()).isNotBlank();
    assertThat(first.at("/evidence").asDouble()).isGreaterThanOrEqualTo(1);
    assertThat(first.at("/because").asText()).isNotBlank();
  }
}
