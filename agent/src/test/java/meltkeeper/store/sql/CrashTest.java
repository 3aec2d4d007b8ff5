package meltkeeper.store.sql;

import static meltkeeper.store.StoreFixture.HERON;
import static meltkeeper.store.StoreFixture.account;
import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.concurrent.locks.LockSupport;
import meltkeeper.store.MemoryStore;
import meltkeeper.store.Store;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

final class CrashTest {

  @TempDir Path directory;

  @ParameterizedTest(name = "seed {0}")
  @ValueSource(longs = {11, 12, 13})
  void writerKilledAtAnyMoment_everyCommitThatReturnedIsThereAndNoHalfOne(long seed)
      throws Exception {
    Random random = new Random(seed);
    String url = "jdbc:sqlite:" + directory.resolve("shop.db");
    int last = -1;
    try (Child child = Child.committing(url, 0)) {
      int enough = 1 + random.nextInt(150);
      while (last < enough) {
        last = child.nextCommit().orElseThrow();
      }
      LockSupport.parkNanos(random.nextLong(3_000_000));
      child.kill();
      Optional<Integer> more = child.nextCommit();
      while (more.isPresent()) {
        last = more.get();
        more = child.nextCommit();
      }
    }
    try (Store store = Stores.open(url)) {
      store.claim();
      int commits = (int) (store.accounts().get(0).total().exposure().hotNanos() / 2_000_000_000L);
      // The one under way when it died may or may not have reached the disk.
      assertThat(commits).isBetween(last + 1, last + 2);
      MemoryStore expected = new MemoryStore();
      for (int number = 0; number < commits; number++) {
        expected.commit(CommittingProgram.commit(number));
      }
      assertThat(store.buckets(HERON, 0, Long.MAX_VALUE))
          .isEqualTo(expected.buckets(HERON, 0, Long.MAX_VALUE));
      assertThat(store.accounts())
          .isEqualTo(List.of(account(HERON, CommittingProgram.total(commits))));
      assertThat(store.outbox().waiting("phone", Integer.MAX_VALUE))
          .isEqualTo(expected.outbox().waiting("phone", Integer.MAX_VALUE));
    }
    assertThat(RawFile.rows(directory.resolve("shop.db"), "PRAGMA integrity_check"))
        .containsExactly("ok");
  }
}
