package meltkeeper.store.sql;

import static meltkeeper.store.StoreFixture.HERON;
import static meltkeeper.store.StoreFixture.account;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import meltkeeper.store.Store;
import meltkeeper.store.StoreException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class CopiesTest {

  private static final Instant NOW = Instant.parse("2026-03-02T08:00:00Z");

  @TempDir private Path directory;

  private Path store() {
    return directory.resolve("shop.db");
  }

  private String url() {
    return "jdbc:sqlite:" + store();
  }

  private void commit(int from, int until) {
    try (Store store = Stores.open(url())) {
      for (int number = from; number < until; number++) {
        store.commit(CommittingProgram.commit(number));
      }
    }
  }

  private int commits(Path file) {
    try (Store store = Stores.open("jdbc:sqlite:" + file)) {
      return store.accounts().isEmpty() ? 0 : commits(store);
    }
  }

  private static int commits(Store store) {
    return (int) (store.accounts().get(0).total().exposure().hotNanos() / 2_000_000_000L);
  }

  private List<String> files() throws IOException {
    try (Stream<Path> files = Files.list(directory)) {
      return files.map(file -> file.getFileName().toString()).sorted().toList();
    }
  }

  @Test
  void copy_whileAnotherProcessCommits_isWholeAndSound() throws Exception {
    try (Child child = Child.committing(url(), 0)) {
      int last = child.nextCommit().orElseThrow();
      for (int number = 1; number <= 5; number++) {
        Path copy = directory.resolve("copy-" + number + ".db");
        Copies.copy(url(), copy);
        int held = commits(copy);
        assertThat(held).as("copy %d", number).isGreaterThan(last);
        try (Store opened = Stores.open("jdbc:sqlite:" + copy)) {
          assertThat(opened.accounts())
              .isEqualTo(List.of(account(HERON, CommittingProgram.total(held))));
        }
        last = held;
        while (child.nextCommit().orElseThrow() < last) {
          // The child prints each commit; wait until it has told of those that the copy holds.
        }
      }
      assertThat(child.isAlive()).isTrue();
    }
  }

  @Test
  void restoredStore_holdsWhatTheCopyHeld_andTheFormerOneIsKept() {
    commit(0, 3);
    Path copy = directory.resolve("copy.db");
    Copies.copy(url(), copy);
    commit(3, 7);

    Optional<Path> kept = Copies.restore(url(), copy, NOW);

    assertThat(kept).contains(directory.resolve("shop.db.replaced-20260302T080000Z"));
    assertThat(commits(store())).isEqualTo(3);
    assertThat(commits(kept.orElseThrow())).isEqualTo(7);
    assertThat(commits(copy)).isEqualTo(3);
  }

  @Test
  void restore_whereNoStoreIs_makesIt() {
    commit(0, 2);
    Path copy = directory.resolve("copy.db");
    Copies.copy(url(), copy);
    String elsewhere = "jdbc:sqlite:" + directory.resolve("new.db");

    assertThat(Copies.restore(elsewhere, copy, NOW)).isEmpty();
    assertThat(commits(directory.resolve("new.db"))).isEqualTo(2);
  }

  @Test
  void restore_whileAnAgentWrites_isRefusedAndChangesNothing() throws Exception {
    commit(0, 2);
    Path copy = directory.resolve("copy.db");
    Copies.copy(url(), copy);
    try (Store agent = Stores.open(url())) {
      agent.claim();
      assertThatThrownBy(() -> Copies.restore(url(), copy, NOW))
          .isInstanceOf(StoreException.class)
          .hasMessageContaining("is writing to it");
      agent.commit(CommittingProgram.commit(2));
    }
    assertThat(commits(store())).isEqualTo(3);
    assertThat(files()).noneMatch(name -> name.contains("restoring") || name.contains("replaced"));
  }

  @Test
  void damagedCopy_isRefused_andTheStoreStays() throws IOException {
    commit(0, 40);
    Path copy = directory.resolve("copy.db");
    Copies.copy(url(), copy);
    byte[] bytes = Files.readAllBytes(copy);
    java.util.Arrays.fill(bytes, bytes.length / 2, bytes.length, (byte) 0x5a);
    Files.write(copy, bytes);

    assertThatThrownBy(() -> Copies.restore(url(), copy, NOW))
        .isInstanceOf(StoreException.class)
        .hasMessageContaining("damaged");
    assertThat(commits(store())).isEqualTo(40);
  }

  @Test
  void otherThanACopy_isRefusedInWords() throws IOException {
    commit(0, 1);
    Path text = Files.writeString(directory.resolve("list.txt"), "liner,nozzle\n".repeat(100));
    Path empty = Files.createFile(directory.resolve("empty.db"));
    Path copy = directory.resolve("copy.db");
    Copies.copy(url(), copy);

    assertThatThrownBy(() -> Copies.restore(url(), text, NOW)).hasMessageContaining("no SQLite");
    assertThatThrownBy(() -> Copies.restore(url(), empty, NOW)).hasMessageContaining("is empty");
    assertThatThrownBy(() -> Copies.restore(url(), directory.resolve("none.db"), NOW))
        .hasMessageContaining("there is no such file");
    assertThatThrownBy(() -> Copies.copy(url(), copy)).hasMessageContaining("name a new file");
    assertThatThrownBy(
            () ->
                Copies.copy(
                    "jdbc:sqlite:" + directory.resolve("none.db"), text.resolveSibling("c")))
        .hasMessageContaining("nothing to copy");
  }

  @Test
  void fileWithANewerLogBesideIt_isNoCopy() throws IOException {
    commit(0, 1);
    Path torn = directory.resolve("torn.db");
    Files.copy(store(), torn);
    Files.writeString(directory.resolve("torn.db-wal"), "commits");

    assertThatThrownBy(() -> Copies.restore(url(), torn, NOW))
        .hasMessageContaining("newest commits are still in");
  }
}
