package meltkeeper.cli.doctor;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import meltkeeper.config.ConfigReader;
import meltkeeper.config.Settings;
import meltkeeper.protocol.Arrival;
import meltkeeper.protocol.Origin;
import meltkeeper.protocol.Payload;
import meltkeeper.protocol.Received;
import meltkeeper.protocol.mapping.MappingDecoder;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class DoctorTest {

  private static final Instant NOW = Instant.parse("2026-03-02T08:00:00Z");

  @TempDir private Path folder;

  private Settings settings() {
    return ConfigReader.read(
            folder.resolve("meltkeeper.yaml").toString(),
            """
            zone: UTC
            brokers: { shop: { url: "tcp://127.0.0.1:1883" } }
            mappings:
              status:
                - topic: plant/{printer}/status
                  read: { hot-end-temperature: /now, heater-duty: /duty, filament-commanded: /asked }
            printers:
              heron: { from: { broker: shop, mapping: status } }
              egret: { from: { tcp: "127.0.0.1:9" } }
            """)
        .fold(
            valid -> valid,
            faults -> {
              throw new AssertionError(faults.toString());
            });
  }

  private static Heard heard(Settings settings, String... payloads) {
    Heard heard = new Heard(new MappingDecoder(settings.routes("shop")));
    for (int i = 0; i < payloads.length; i++) {
      heard.take(
          Received.fresh(
              new Origin.Topic("shop", "plant/heron/status"),
              Payload.of(payloads[i]),
              new Arrival(i * 1_000_000_000L, i * 1_000_000_000L)));
    }
    return heard;
  }

  private static String[] tenTimes(String payload) {
    String[] payloads = new String[12];
    java.util.Arrays.fill(payloads, payload);
    return payloads;
  }

  private static List<String> told(
      Settings settings, Heard heard, boolean agentRuns, Map<String, Instant> lastHeard) {
    Kept kept = new Kept(agentRuns, lastHeard, Finding.well("store", "as it should be"));
    return new Doctor(settings, heard, List.of(), kept, NOW)
        .findings().stream().map(Finding::toString).toList();
  }

  @Test
  void printerThatTellsAllThatIsMapped_isWell() {
    Settings settings = settings();
    Heard heard =
        heard(
            settings,
            "{\"now\":214,\"duty\":0.4,\"asked\":1}",
            "{\"now\":215,\"duty\":0.5,\"asked\":2}");
    assertThat(told(settings, heard, true, Map.of()))
        .contains("well  printer heron: heard, with all that is mapped")
        .noneMatch(line -> line.contains("heron: the jam watch will be blind"));
  }

  @Test
  void signalThatNeverComes_isNamed_andTheJamWatchsBlindness() {
    Settings settings = settings();
    assertThat(told(settings, heard(settings, "{\"now\":214,\"duty\":0.4}"), true, Map.of()))
        .anyMatch(line -> line.contains("heron: heard, but never filament-commanded"))
        .anyMatch(line -> line.contains("blind: the filament asked for is not told"))
        .anyMatch(line -> line.contains("if it stays so, map filament-commanded"));
  }

  @Test
  void valueThatNeverMoves_isSuspected_onlyWhenItShould() {
    Settings settings = settings();
    assertThat(
            told(settings, heard(settings, tenTimes("{\"now\":214,\"duty\":0.4}")), true, Map.of()))
        .anyMatch(line -> line.contains("hot-end-temperature stood at 214.0 in 12 readings"))
        .anyMatch(line -> line.contains("heater-duty stood at 0.4 in 12 readings"));
    assertThat(told(settings, heard(settings, tenTimes("{\"now\":21,\"duty\":0}")), true, Map.of()))
        .noneMatch(line -> line.contains("heater-duty stood"));
  }

  @Test
  void payloadThatCannotBeRead_isTold() {
    Settings settings = settings();
    assertThat(told(settings, heard(settings, "{\"now\":\"warm\"}"), true, Map.of()))
        .anyMatch(line -> line.startsWith("weak  messages: not read: not-a-number"));
  }

  @Test
  void printerOnALineOfItsOwn_countsAsHeard_whenTheRunningAgentHeardItLately() {
    Settings settings = settings();
    Heard heard = heard(settings);
    assertThat(told(settings, heard, true, Map.of("egret", NOW.minusSeconds(5))))
        .anyMatch(line -> line.startsWith("well  printer egret: the running agent heard it"));
    assertThat(told(settings, heard, true, Map.of("egret", NOW.minusSeconds(7200))))
        .anyMatch(line -> line.startsWith("weak  printer egret: nothing was heard"));
    assertThat(told(settings, heard, false, Map.of("egret", NOW.minusSeconds(5))))
        .anyMatch(line -> line.startsWith("weak  printer egret: nothing was heard"));
  }

  @Test
  void clockBehindTheStore_isBad() {
    Settings settings = settings();
    assertThat(told(settings, heard(settings), false, Map.of("heron", NOW.plusSeconds(86_400))))
        .anyMatch(line -> line.startsWith("bad   clock: it says 2026-03-02T08:00:00Z"));
  }

  @Test
  void copiesThatAreNoLongerMade_areTold_whileAnAgentRuns() throws Exception {
    Settings settings = settings();
    Files.createDirectories(folder.resolve("backups"));
    Files.createFile(folder.resolve("backups/meltkeeper-2026-02-20.db"));
    Files.createFile(folder.resolve("backups/meltkeeper-2090-01-01.db"));
    assertThat(told(settings, heard(settings), true, Map.of()))
        .anyMatch(line -> line.startsWith("weak  daily copies") && line.contains("2026-02-20"));
    assertThat(told(settings, heard(settings), false, Map.of()))
        .anyMatch(line -> line.startsWith("well  daily copies") && line.contains("2026-02-20"));
    Files.createFile(folder.resolve("backups/meltkeeper-2026-03-01.db"));
    assertThat(told(settings, heard(settings), true, Map.of()))
        .anyMatch(line -> line.startsWith("well  daily copies") && line.contains("2026-03-01"));
  }

  @Test
  void storeThatIsNone_isBad_andOneThatIsNotThereYet_isNot() throws Exception {
    Settings settings = settings();
    assertThat(Kept.of(settings).finding().toString())
        .startsWith("well  store")
        .contains("not there");
    Files.writeString(settings.storeFile(), "a list of parts\n".repeat(100));
    assertThat(Kept.of(settings).finding().toString())
        .startsWith("bad   store")
        .contains("no SQLite database");
  }

  @Test
  void nobodyToCall_isTold() {
    Settings settings = settings();
    assertThat(told(settings, heard(settings), true, Map.of()))
        .anyMatch(line -> line.startsWith("weak  alerts: nobody is called"));
  }
}
