package meltkeeper.store.sql;

import static meltkeeper.store.StoreFixture.HERON;
import static meltkeeper.store.StoreFixture.MORNING;
import static meltkeeper.store.StoreFixture.bucket;
import static meltkeeper.store.StoreFixture.credits;
import static meltkeeper.store.StoreFixture.hot;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import meltkeeper.part.Part;
import meltkeeper.store.Commit;
import meltkeeper.store.Store;
import meltkeeper.store.StoreException;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

final class SharedFileTest {

  @TempDir Path directory;
  private String url = "";

  @BeforeEach
  void nameTheFile() {
    url = "jdbc:sqlite:" + directory.resolve("shop.db");
  }

  @Test
  void partsSaved_whileAnotherProcessCommits_neitherFails() throws Exception {
    int saves = 60;
    try (Child child = Child.committing(url, 500)) {
      int committed = child.nextCommit().orElseThrow();
      try (Store store = Stores.open(url)) {
        for (int i = 0; i < saves; i++) {
          Part part = Part.added("L-%03d".formatted(i), "liner", Optional.empty(), MORNING);
          assertThat(store.saveParts(store.revision(), List.of(part))).isTrue();
          committed = child.nextCommit().orElseThrow();
        }
        assertThat(store.parts()).hasSize(saves);
        assertThat(store.revision()).isEqualTo(saves);
        assertThat(store.buckets(HERON, 0, Long.MAX_VALUE)).hasSizeGreaterThan(committed);
      }
      assertThat(child.isAlive()).isTrue();
    }
  }

  @Test
  void claim_whileAnotherProcessHoldsIt_namesThatProcess() throws Exception {
    try (Child child = Child.committing(url, 500)) {
      child.nextCommit();
      try (Store store = Stores.open(url)) {
        assertThatThrownBy(store::claim)
            .isInstanceOf(StoreException.class)
            .hasMessage(
                "store %s: process %d is writing to it (it holds %s.lock); stop that process"
                        .formatted(file(), child.pid(), file())
                    + " first, or name another file for the store");
        assertThatThrownBy(() -> store.commit(Commit.NOTHING)).isInstanceOf(StoreException.class);
        child.kill();
        store.claim();
      }
    }
  }

  private Path file() throws java.io.IOException {
    return directory.toRealPath().resolve("shop.db");
  }

  @Test
  void claim_byTwoStoresOfOneProcess_isRefusedUntilTheFirstIsClosed() throws Exception {
    try (Store second = Stores.open(url)) {
      try (Store first = Stores.open(url)) {
        first.claim();
        assertThatThrownBy(second::claim)
            .isInstanceOf(StoreException.class)
            .hasMessageContaining("process " + ProcessHandle.current().pid() + " is writing");
      }
      second.commit(credits(bucket(HERON, 0, hot(215, 1))));
    }
  }

  @Test
  void claim_throughALinkToTheFile_isTheSameClaim() throws Exception {
    try (Store first = Stores.open(url)) {
      first.claim();
      Path link = Files.createSymbolicLink(directory.resolve("link.db"), file());
      try (Store second = Stores.open("jdbc:sqlite:" + link)) {
        assertThatThrownBy(second::claim).hasMessageContaining("is writing to it");
      }
    }
  }

  @Test
  void claim_refusedInTheSameProcess_stillKeepsOtherProcessesOut() throws Exception {
    try (Store first = Stores.open(url)) {
      first.claim();
      try (Store second = Stores.open(url)) {
        assertThatThrownBy(second::claim).isInstanceOf(StoreException.class);
      }
      try (Child child = Child.committing(url, 500)) {
        assertThatThrownBy(child::nextCommit)
            .hasMessageContaining("process " + ProcessHandle.current().pid() + " is writing");
      }
    }
  }
}
