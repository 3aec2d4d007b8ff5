package meltkeeper.protocol.fuzz;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;

/** Cases that were found, or that lead a search: none lets an exception escape. */
final class KnownCasesTest {

  private final BytesTargets targets = new BytesTargets();

  /** What takes the bytes of a case. */
  @FunctionalInterface
  private interface Target {
    void take(byte[] bytes) throws Exception;
  }

  private final Map<String, Target> byName =
      Map.of(
          "gcodeLines", targets::gcodeLines,
          "payloads", targets::payloads,
          "recordingLines", targets::recordingLines,
          "gcodeFiles", targets::gcodeFiles);

  @TestFactory
  Stream<DynamicTest> knownCase_isTakenOrRefused() {
    return byName.entrySet().stream()
        .flatMap(
            target ->
                files(target.getKey())
                    .map(
                        file ->
                            DynamicTest.dynamicTest(
                                target.getKey() + " " + file.getFileName(),
                                () -> target.getValue().take(Files.readAllBytes(file)))));
  }

  private static Stream<Path> files(String target) {
    String folder = "BytesFuzzTestInputs/" + target;
    URI uri =
        URI.create(Objects.requireNonNull(KnownCasesTest.class.getResource(folder)).toString());
    try (Stream<Path> files = Files.list(Path.of(uri))) {
      return files.sorted().toList().stream();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
