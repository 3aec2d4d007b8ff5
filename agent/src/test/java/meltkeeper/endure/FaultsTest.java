package meltkeeper.endure;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.api.io.TempDir;

/**
 * Some faults of each kind. The campaign that tries a thousand, and makes the table of
 * docs/reliability.md, is {@code FaultCampaign} in the quality profile.
 */
final class FaultsTest {

  private static final long SEED = 20260302L;

  @TempDir private Path folder;

  @TestFactory
  Stream<DynamicTest> fault_losesNoHour_andDoublesNone() {
    return Ordeals.all().stream()
        .map(ordeal -> DynamicTest.dynamicTest(ordeal.fault(), () -> endure(ordeal)));
  }

  private void endure(Ordeal ordeal) throws Exception {
    Path own = Files.createDirectory(folder.resolve(ordeal.getClass().getSimpleName()));
    Tried tried = ordeal.endure(ordeal.few(), SEED, own);
    assertThat(tried.lostNanos()).as("lost, seed %d: %s", SEED, tried).isZero();
    assertThat(tried.doubledNanos()).as("doubled, seed %d: %s", SEED, tried).isZero();
  }

  @Test
  void powerCut_onADiskThatLiesAboutItsSyncs_isSeenToLoseHours() throws Exception {
    Tried tried = new PowerCut(false).endure(8, SEED, folder);

    assertThat(tried.lostNanos()).isPositive();
  }
}
