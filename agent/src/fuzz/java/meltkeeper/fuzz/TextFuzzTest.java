package meltkeeper.fuzz;

import com.code_intelligence.jazzer.junit.FuzzTest;
import java.io.IOException;

/**
 * Looks for cases by coverage: docs/reliability.md. Whatever it finds stays in its folder of
 * inputs.
 */
final class TextFuzzTest {

  private final TextTargets targets = new TextTargets();

  @FuzzTest(maxDuration = "3m")
  void configuration(byte[] bytes) {
    targets.configuration(bytes);
  }

  @FuzzTest(maxDuration = "3m")
  void pastOnPaper(byte[] bytes) {
    targets.pastOnPaper(bytes);
  }

  @FuzzTest(maxDuration = "3m")
  void bodies(byte[] bytes) {
    targets.bodies(bytes);
  }

  @FuzzTest(maxDuration = "3m")
  void batches(byte[] bytes) throws IOException {
    targets.batches(bytes);
  }
}
