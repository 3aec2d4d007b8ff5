package meltkeeper.source.recording;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import meltkeeper.protocol.Arrival;
import meltkeeper.protocol.Origin;
import meltkeeper.protocol.Payload;
import meltkeeper.protocol.Received;
import meltkeeper.protocol.Rejected;
import meltkeeper.protocol.recording.RecordingLine;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class RecordingFilesTest {

  @TempDir Path folder;

  @ParameterizedTest
  @ValueSource(strings = {"r.jsonl", "r.jsonl.gz"})
  void recording_readBack_isWhatWasReceived(String name) throws Exception {
    List<Received> received = received(500);
    Path file = folder.resolve(name);
    try (RecordingWriter writer = new RecordingWriter(file)) {
      received.forEach(writer::accept);
      assertThat(writer.lines()).isEqualTo(500);
    }

    assertThat(parsed(file).received).isEqualTo(received);
    assertThat(parsed(file).rejected).isEmpty();
  }

  @Test
  void digest_isOfTheText_whateverItsCompression() throws Exception {
    Path plain = folder.resolve("r.jsonl");
    Path compressed = folder.resolve("r.jsonl.gz");
    for (Path file : List.of(plain, compressed)) {
      try (RecordingWriter writer = new RecordingWriter(file)) {
        received(100).forEach(writer::accept);
      }
    }
    assertThat(RecordingReader.read(plain, line -> {}))
        .isEqualTo(RecordingReader.read(compressed, line -> {}));
  }

  @Test
  void digest_ofAKnownText_isItsSha256() throws Exception {
    Path file = Files.writeString(folder.resolve("abc"), "abc");

    // NIST, Cryptographic Standards and Guidelines, examples of SHA-256: the one-block message.
    assertThat(RecordingReader.read(file, line -> {}))
        .isEqualTo("ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
  }

  @ParameterizedTest
  @ValueSource(strings = {"r.jsonl", "r.jsonl.gz"})
  void processKilled_leavesAllThatWasFlushed(String name) throws Exception {
    List<Received> received = received(300);
    Path file = folder.resolve(name);
    Path found = folder.resolve("found-" + name);
    try (RecordingWriter writer = new RecordingWriter(file)) {
      received.subList(0, 200).forEach(writer::accept);
      writer.flush();
      received.subList(200, 300).forEach(writer::accept);
      // What a killed process leaves: the file as it stands.
      Files.copy(file, found);
    }

    assertThat(parsed(found).received)
        .startsWith(received.subList(0, 200).toArray(Received[]::new));
  }

  @ParameterizedTest
  @ValueSource(strings = {"r.jsonl", "r.jsonl.gz"})
  void fileTornAnywhere_givesTheLinesBeforeIt_andCountsTheTear(String name) throws Exception {
    List<Received> received = received(12);
    byte[] whole = written(name, received);
    for (int length = 10; length < whole.length; length++) {
      Path torn = Files.write(folder.resolve("torn"), Arrays.copyOf(whole, length));
      Parsed parsed = parsed(torn);
      assertThat(received.subList(0, parsed.received.size())).isEqualTo(parsed.received);
      assertThat(parsed.rejected.size()).isLessThanOrEqualTo(1);
      assertThat(parsed.rejected)
          .allMatch(rejected -> rejected.reason() == Rejected.Reason.TORN_LINE);
    }
  }

  @Test
  void compressedFile_endingInZeros_isReadUpToThem() throws Exception {
    byte[] whole = written("r.jsonl.gz", received(5_000));
    Arrays.fill(whole, whole.length / 2, whole.length, (byte) 0);
    Parsed parsed = parsed(Files.write(folder.resolve("zeros"), whole));

    assertThat(parsed.received).hasSizeGreaterThan(100);
    assertThat(parsed.rejected)
        .extracting(Rejected::reason)
        .containsOnly(Rejected.Reason.TORN_LINE);
  }

  @Test
  void blankLines_andLineEndsOfAnyKind_arePassedOver() throws Exception {
    Path file = Files.writeString(folder.resolve("r"), "a\r\n\n  \nb", StandardCharsets.UTF_8);
    List<String> lines = new ArrayList<>();
    RecordingReader.read(file, lines::add);

    assertThat(lines).containsExactly("a", "b");
  }

  @Test
  void existingFile_isNeverOverwritten() throws Exception {
    Path file = Files.writeString(folder.resolve("r.jsonl"), "dear old recording");

    assertThatThrownBy(() -> new RecordingWriter(file))
        .isInstanceOf(FileAlreadyExistsException.class);
    assertThat(file).hasContent("dear old recording");
  }

  @Test
  void missingFile_isSaid() {
    assertThatThrownBy(() -> RecordingReader.read(folder.resolve("none"), line -> {}))
        .isInstanceOf(NoSuchFileException.class);
  }

  private byte[] written(String name, List<Received> received) throws IOException {
    Path file = folder.resolve(name);
    try (RecordingWriter writer = new RecordingWriter(file)) {
      received.forEach(writer::accept);
    }
    return Files.readAllBytes(file);
  }

  private static List<Received> received(int count) {
    return IntStream.range(0, count)
        .mapToObj(
            i ->
                new Received(
                    i % 3 == 0
                        ? new Origin.Line("ibis", Origin.Direction.IN)
                        : new Origin.Topic("shop", "plant/heron/status"),
                    Payload.of(i % 3 == 0 ? "ok T:" + i + " /215.0" : "{\"now\":" + i + "}"),
                    Arrival.at(1_000_000_000L * i),
                    i % 3 == 1))
        .toList();
  }

  private static Parsed parsed(Path file) throws IOException {
    Parsed parsed = new Parsed(new ArrayList<>(), new ArrayList<>());
    RecordingReader.read(
        file, line -> RecordingLine.parse(line, parsed.received::add, parsed.rejected::add));
    return parsed;
  }

  private record Parsed(List<Received> received, List<Rejected> rejected) {}
}
