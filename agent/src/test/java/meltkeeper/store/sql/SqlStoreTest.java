package meltkeeper.store.sql;

import static meltkeeper.store.StoreFixture.HERON;
import static meltkeeper.store.StoreFixture.IBIS;
import static meltkeeper.store.StoreFixture.MORNING;
import static meltkeeper.store.StoreFixture.account;
import static meltkeeper.store.StoreFixture.bucket;
import static meltkeeper.store.StoreFixture.credits;
import static meltkeeper.store.StoreFixture.hot;
import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.sql.SQLException;
import java.time.Instant;
import java.time.InstantSource;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import meltkeeper.part.Part;
import meltkeeper.store.Commit;
import meltkeeper.store.Store;
import meltkeeper.store.StoreContract;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

final class SqlStoreTest extends StoreContract {

  @TempDir Path directory;

  @Override
  protected Store open() {
    return Stores.open("jdbc:sqlite:" + directory.resolve("contract.db"));
  }

  private String url() {
    return "jdbc:sqlite:" + directory.resolve("shop.db");
  }

  @Test
  void store_reopened_holdsEverything() {
    Part liner = Part.added("L-014", "liner", Optional.of("long"), MORNING);
    try (Store store = Stores.open(url())) {
      store.saveParts(0, List.of(liner));
      store.keepRecording(
          "d1",
          "monday",
          MORNING,
          new Commit(
              List.of(bucket(IBIS, 0, hot(240, 9))),
              List.of(),
              List.of(account(IBIS, hot(240, 9)))));
    }
    try (Store store = Stores.open(url())) {
      assertThat(store.parts()).containsExactly(liner);
      assertThat(store.revision()).isEqualTo(1);
      assertThat(store.accounts()).containsExactly(account(IBIS, hot(240, 9)));
      assertThat(store.tally(IBIS, 0, Long.MAX_VALUE)).isEqualTo(hot(240, 9));
      assertThat(store.hasRecording("d1")).isTrue();
    }
  }

  @Test
  void savedParts_replaced_stayInTheFileWithTheTimeTheyWereRecorded() throws SQLException {
    Part before = Part.added("L-014", "liner", Optional.of("long"), MORNING);
    Part after = Part.added("L-014", "liner", Optional.of("short"), MORNING);
    InstantSource clock = InstantSource.fixed(Instant.parse("2026-03-02T09:00:00.5Z"));
    try (Store store = Stores.open(url(), clock)) {
      store.saveParts(0, List.of(before));
      store.saveParts(1, List.of(after));

      assertThat(store.parts()).containsExactly(after);
      // 2026-03-02T09:00:00.5Z is 1772442000.5 s since 1970 (GNU date).
      assertThat(
              RawFile.rows(
                  directory.resolve("shop.db"),
                  "SELECT variant, recorded_nanos FROM part JOIN revision ON number = revision"))
          .containsExactly("long|1772442000500000000", "short|1772442000500000000");
    }
  }

  @Test
  void reader_whileAnotherStoreWrites_seesWholeCommits() {
    try (Store agent = Stores.open(url());
        Store command = Stores.open(url())) {
      agent.commit(credits(bucket(HERON, 0, hot(215, 10))));
      assertThat(command.tally(HERON, 0, Long.MAX_VALUE)).isEqualTo(hot(215, 10));
      command.saveParts(0, List.of(Part.added("L-014", "liner", Optional.empty(), MORNING)));
      assertThat(agent.revision()).isEqualTo(1);
      assertThat(agent.parts()).isEqualTo(command.parts());
    }
  }

  @Test
  void newFile_openedByManyAtOnce_isMadeOnce() throws Exception {
    int many = 6;
    ExecutorService pool = Executors.newFixedThreadPool(many);
    try {
      Callable<Long> opening =
          () -> {
            try (Store store = Stores.open(url())) {
              return store.revision();
            }
          };
      List<Future<Long>> opened = pool.invokeAll(java.util.Collections.nCopies(many, opening));
      for (Future<Long> one : opened) {
        assertThat(one.get()).isZero();
      }
    } finally {
      pool.shutdownNow();
    }
  }
}
