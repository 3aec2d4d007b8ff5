package meltkeeper.cli.copies;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.LocalDate;
import java.util.List;
import meltkeeper.config.CopySettings;
import meltkeeper.store.StoreException;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class DailyCopiesTest {

  @TempDir private Path folder;
  private LocalDate today = LocalDate.of(2026, 2, 26);
  private boolean broken;
  private int asked;

  @BeforeEach
  void makeStore() throws IOException {
    Files.writeString(folder.resolve("shop.db"), "facts");
  }

  private DailyCopies copies(int keep) {
    return new DailyCopies(
        folder.resolve("shop.db"),
        new CopySettings(folder.resolve("backups"), keep),
        this::copy,
        () -> today);
  }

  private void copy(Path to) {
    asked++;
    if (broken) {
      throw new StoreException("store: the disk is full");
    }
    try {
      Files.writeString(to, "copy");
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private List<String> kept() throws IOException {
    return new CopyShelf(folder.resolve("backups"), 1)
        .copies().stream().map(file -> file.getFileName().toString()).toList();
  }

  @Test
  void tenDays_leaveTheNewestThree() throws IOException {
    try (DailyCopies copies = copies(3)) {
      for (int day = 0; day < 10; day++) {
        copies.look();
        copies.look();
        today = today.plusDays(1);
      }
    }
    assertThat(asked).isEqualTo(10);
    assertThat(kept())
        .containsExactly(
            "meltkeeper-2026-03-07.db", "meltkeeper-2026-03-06.db", "meltkeeper-2026-03-05.db");
  }

  @Test
  void clockThatOnceWasYearsAhead_neverCostsTodaysCopy() throws IOException {
    try (DailyCopies copies = copies(2)) {
      for (int year = 2090; year < 2093; year++) {
        today = LocalDate.of(year, 1, 1);
        copies.look();
      }
      today = LocalDate.of(2026, 2, 26);
      copies.look();
    }
    assertThat(kept()).containsExactly("meltkeeper-2092-01-01.db", "meltkeeper-2026-02-26.db");
  }

  @Test
  void otherFilesInTheFolder_stay() throws IOException {
    Files.createDirectories(folder.resolve("backups"));
    Files.writeString(folder.resolve("backups/before-the-move.db"), "by hand");
    try (DailyCopies copies = copies(1)) {
      copies.look();
      today = today.plusDays(1);
      copies.look();
    }
    assertThat(kept()).hasSize(1);
    assertThat(folder.resolve("backups/before-the-move.db")).exists();
  }

  @Test
  void copyThatFails_isTriedAgain_andDeletesNothing() throws IOException {
    try (DailyCopies copies = copies(1)) {
      copies.look();
      today = today.plusDays(1);
      broken = true;
      copies.look();
      assertThat(kept()).containsExactly("meltkeeper-2026-02-26.db");
      broken = false;
      copies.look();
      assertThat(kept()).containsExactly("meltkeeper-2026-02-27.db");
    }
  }

  @Test
  void begun_itLooksByItself_andKeepNothing_neverLooks() throws IOException {
    try (DailyCopies copies = copies(1);
        DailyCopies none =
            new DailyCopies(
                folder.resolve("shop.db"),
                new CopySettings(folder.resolve("none"), 0),
                this::copy,
                () -> today)) {
      none.begin(Duration.ofMillis(1));
      copies.begin(Duration.ofMillis(1));
      await().until(() -> !kept().isEmpty());
    }
    assertThat(folder.resolve("none")).doesNotExist();
  }
}
