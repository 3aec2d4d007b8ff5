package meltkeeper.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import meltkeeper.config.ConfigReader;
import meltkeeper.config.Settings;
import meltkeeper.desk.AnswerJson;
import meltkeeper.pipeline.Intake;
import meltkeeper.pipeline.Pipeline;
import meltkeeper.protocol.Arrival;
import meltkeeper.protocol.Origin;
import meltkeeper.protocol.Payload;
import meltkeeper.protocol.Received;
import meltkeeper.source.recording.RecordingWriter;
import meltkeeper.store.MemoryStore;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ReplayTest {

  @TempDir private Path folder = Path.of("");
  private final StringWriter out = new StringWriter();
  private final StringWriter err = new StringWriter();

  @BeforeEach
  void writeConfiguration() throws IOException {
    Files.writeString(
        folder.resolve("meltkeeper.yaml"),
        """
        store: jdbc:sqlite:shop.db
        brokers:
          shop: { url: tcp://127.0.0.1:1883 }
        mappings:
          status-json:
            - topic: plant/{printer}/status
              time: { at: /at, format: iso }
              read: { hot-end-temperature: /hotend/now, filament-commanded: /feed/asked }
        printers:
          heron: { from: { broker: shop, mapping: status-json } }
          ibis: { from: { tcp: 127.0.0.1:8899 } }
        """);
  }

  private int run(String... args) {
    out.getBuffer().setLength(0);
    err.getBuffer().setLength(0);
    return Main.run(new PrintWriter(out, true), new PrintWriter(err, true), args);
  }

  private String config() {
    return folder.resolve("meltkeeper.yaml").toString();
  }

  private static Received message(int second) {
    return Received.fresh(
        new Origin.Topic("shop", "plant/heron/status"),
        Payload.of(Day.payload(second)),
        Arrival.at(second * 1_000_000_000L + 123_000));
  }

  private static Received line(int second) {
    return Received.fresh(
        new Origin.Line("ibis", Origin.Direction.IN),
        Payload.of("ok T:" + Day.celsius(second) + " /225.0 B:60.0 /60.0 @:54 B@:20"),
        Arrival.at(second * 1_000_000_000L + 456_000));
  }

  @Test
  void replay_ofARecording_equalsTheLivePathByteForByte() throws Exception {
    Path recording = folder.resolve("morning.jsonl.gz");
    Settings settings =
        ConfigReader.read(Path.of(config()))
            .fold(
                valid -> valid,
                faults -> {
                  throw new AssertionError(faults.toString());
                });
    MemoryStore store = new MemoryStore();
    Intake intake = new Intake(Joints.decoders(settings), Joints.limits(settings), store);
    long lines = 0;
    try (RecordingWriter writer = new RecordingWriter(recording);
        Pipeline pipeline = new Pipeline(intake, Duration.ofMillis(20), () -> 0)) {
      for (int second : Day.samples(0, 9000)) {
        for (Received received : new Received[] {message(second), line(second)}) {
          writer.accept(received);
          pipeline.accept(received);
          lines++;
        }
      }
    }

    assertThat(run("replay", "--config", config(), recording.toString(), "--json")).isZero();
    assertThat(out.toString().strip())
        .isEqualTo(AnswerJson.print(ReplayAnswer.of(intake.live(), List.of(), lines)))
        .contains("\"225-230\":");
  }

  @Test
  void replay_intoTheStore_creditsARecordingOnce() throws IOException {
    Path recording = folder.resolve("morning.jsonl");
    try (RecordingWriter writer = new RecordingWriter(recording)) {
      for (int second : Day.samples(0, 3000)) {
        writer.accept(message(second));
      }
    }

    assertThat(run("replay", "--config", config(), "--store", "--json", recording.toString()))
        .isZero();
    String first = out.toString();
    assertThat(run("replay", "--config", config(), "--store", "--json", recording.toString()))
        .isZero();
    assertThat(err.toString()).contains("was credited before; passed over");
    assertThat(first.replaceAll("\"lines\".*", ""))
        .isEqualTo(out.toString().replaceAll("\"lines\".*", ""));
  }

  @Test
  void replay_ofATornLine_tellsAndGoesOn() throws IOException {
    Path recording = folder.resolve("torn.jsonl");
    Files.writeString(recording, "{\"at\":\"2026-03-0", StandardCharsets.UTF_8);

    assertThat(run("replay", "--config", config(), "--json", recording.toString())).isZero();
    assertThat(out.toString().strip())
        .isEqualTo("{\"printers\":{},\"lines\":1,\"rejected\":{\"torn-line\":1}}");
  }

  @Test
  void replay_ofAMissingFile_failsInWords() {
    assertThat(run("replay", "--config", config(), "no-such-file.jsonl")).isEqualTo(1);
    assertThat(err.toString()).startsWith("meltkeeper: cannot read no-such-file.jsonl");
  }

  @Test
  void check_ofAFaultyConfiguration_listsEveryFaultAndExitsWith2() throws IOException {
    Path file = folder.resolve("faulty.yaml");
    Files.writeString(
        file,
        "brokres: {}\nhttp: { listen: nowhere }\nprinters: { heron: { from: { tcp: 192.0.2.7:8899 } } }\n");

    assertThat(run("check", "--config", file.toString())).isEqualTo(2);
    assertThat(err.toString().lines())
        .hasSize(2)
        .anyMatch(line -> line.contains("faulty.yaml:1: ") && line.contains("brokers"))
        .anyMatch(line -> line.contains("faulty.yaml:2: http.listen: found \"nowhere\""));
  }

  @Test
  void unknownCommand_exitsWith2AndNamesTheNearest() {
    assertThat(run("prat")).isEqualTo(2);
    assertThat(err.toString()).contains("'prat'", "did you mean part?", "try: meltkeeper --help");
  }

  @Test
  void unknownOption_exitsWith2AndNamesTheNearest() {
    assertThat(run("check", "--confg", "x")).isEqualTo(2);
    assertThat(err.toString()).contains("--confg", "did you mean --config?");
  }
}
