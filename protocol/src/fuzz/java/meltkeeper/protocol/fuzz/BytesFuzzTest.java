package meltkeeper.protocol.fuzz;

import com.code_intelligence.jazzer.junit.FuzzTest;

/**
 * Looks for cases by coverage: docs/reliability.md. Whatever it finds stays in its folder of
 * inputs.
 */
final class BytesFuzzTest {

  private final BytesTargets targets = new BytesTargets();

  @FuzzTest(maxDuration = "3m")
  void gcodeLines(byte[] bytes) {
    targets.gcodeLines(bytes);
  }

  @FuzzTest(maxDuration = "3m")
  void payloads(byte[] bytes) {
    targets.payloads(bytes);
  }

  @FuzzTest(maxDuration = "3m")
  void recordingLines(byte[] bytes) {
    targets.recordingLines(bytes);
  }

  @FuzzTest(maxDuration = "3m")
  void gcodeFiles(byte[] bytes) {
    targets.gcodeFiles(bytes);
  }
}
