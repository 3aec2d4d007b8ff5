package meltkeeper.store.sql;

import static meltkeeper.store.StoreFixture.HERON;
import static meltkeeper.store.StoreFixture.MORNING;
import static meltkeeper.store.StoreFixture.account;
import static meltkeeper.store.StoreFixture.bucket;
import static meltkeeper.store.StoreFixture.hot;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.RandomAccessFile;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import meltkeeper.ledger.Bucket;
import meltkeeper.ledger.Tally;
import meltkeeper.part.Part;
import meltkeeper.store.Commit;
import meltkeeper.store.Store;
import meltkeeper.store.StoreException;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

final class TroubleTest {

  @TempDir Path directory;
  private Path file = Path.of("");

  @BeforeEach
  void nameTheFile() {
    file = directory.resolve("shop.db");
  }

  private static Store open(Path file) {
    return Stores.open("jdbc:sqlite:" + file);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "jdbc:postgresql://host/db",
        "meltkeeper.db",
        "jdbc:sqlite:",
        "jdbc:sqlite::memory:",
        "jdbc:sqlite:file:x.db",
        "jdbc:sqlite:x.db?mode=ro",
        "jdbc:sqlite:x\0.db",
        ""
      })
  void urlOfNoStore_isRefused_namingWhatIsAllowed(String url) {
    assertThatThrownBy(() -> Stores.open(url))
        .isInstanceOf(StoreException.class)
        .hasMessageStartingWith("store: found \"" + url.replace('\0', ' ') + "\"")
        .hasMessageEndingWith(
            "allowed: jdbc:sqlite: and the path of a file, such as jdbc:sqlite:meltkeeper.db");
  }

  @Test
  void fileThatIsNoDatabase_isRefusedAndLeftAsItIs() throws Exception {
    byte[] letter = "Dear shop, this is a letter. ".repeat(100).getBytes(StandardCharsets.UTF_8);
    Files.write(file, letter);

    assertThatThrownBy(() -> open(file))
        .isInstanceOf(StoreException.class)
        .hasMessageStartingWith("store " + file + ": could not open it: it is no SQLite database")
        .hasMessageEndingWith(
            "name another file for the store, or move this one away to begin a new one");
    assertThat(Files.readAllBytes(file)).isEqualTo(letter);
  }

  @Test
  void damagedFile_isToldWhenItIsRead() throws Exception {
    try (Store store = open(file)) {
      fill(store, 2_000);
    }
    try (RandomAccessFile bytes = new RandomAccessFile(file.toFile(), "rw")) {
      for (long page = 4096 * 40L; page < bytes.length(); page += 4096) {
        bytes.seek(page);
        bytes.write(new byte[200]);
      }
    }
    try (Store store = open(file)) {
      assertThatThrownBy(() -> store.tally(HERON, 0, Long.MAX_VALUE))
          .isInstanceOf(StoreException.class)
          .hasMessageContaining("could not read the facts of heron: the file is damaged")
          .hasMessageEndingWith("put a backup in its place, or move it away to begin a new one");
    }
  }

  private static void fill(Store store, int buckets) {
    List<Bucket> credits = new ArrayList<>();
    for (int i = 0; i < buckets; i++) {
      credits.add(bucket(HERON, i, hot(215, 300)));
    }
    store.commit(new Commit(credits, List.of(), List.of()));
  }

  @Test
  void directoryThatIsMissing_isNamed() {
    Path lost = directory.resolve("lost").resolve("shop.db");

    assertThatThrownBy(() -> open(lost))
        .isInstanceOf(StoreException.class)
        .hasMessage(
            "store %s: the directory %s does not exist; make it, or name another file"
                .formatted(lost, lost.getParent()));
  }

  @Test
  void directoryInPlaceOfTheFile_isNamed() {
    assertThatThrownBy(() -> open(directory))
        .isInstanceOf(StoreException.class)
        .hasMessage("store %s: this is a directory; name a file within it".formatted(directory));
  }

  @Test
  void directoryThatTakesNoFiles_isTold() {
    // Nobody, not even root, makes files in /proc.
    org.junit.jupiter.api.Assumptions.assumeTrue(Files.isDirectory(Path.of("/proc/self")));
    assertThatThrownBy(() -> open(Path.of("/proc/self/shop.db")))
        .isInstanceOf(StoreException.class)
        .hasMessageContaining("could not open it: the file cannot be opened")
        .hasMessageEndingWith("check that its directory exists and that this user may write there");
  }

  @Test
  void readOnlyFile_isTold() throws Exception {
    open(file).close();
    try (Lane lane = readOnly()) {
      assertThatThrownBy(
              () ->
                  lane.change(
                      "commit",
                      connection -> {
                        try (Statement statement = connection.createStatement()) {
                          statement.execute("DELETE FROM bucket");
                        }
                      }))
          .isInstanceOf(StoreException.class)
          .hasMessageStartingWith("store " + file + ": could not commit: it is read-only")
          .hasMessageContaining("let this user write to the file and to its directory");
    }
  }

  private Lane readOnly() throws SQLException {
    org.sqlite.SQLiteConfig config = new org.sqlite.SQLiteConfig();
    config.setReadOnly(true);
    return new Lane(file, config.createConnection("jdbc:sqlite:" + file), "BEGIN");
  }

  @Test
  void fileLockedByAnotherProgram_isToldAfterAWhile() throws Exception {
    open(file).close();
    org.sqlite.SQLiteConfig impatient = new org.sqlite.SQLiteConfig();
    impatient.setBusyTimeout(1);
    try (Lane other = new Lane(file, impatient.createConnection("jdbc:sqlite:" + file), "BEGIN");
        Lane lane =
            new Lane(file, impatient.createConnection("jdbc:sqlite:" + file), "BEGIN IMMEDIATE")) {
      other.change(
          "hold it",
          connection -> {
            try (Statement statement = connection.createStatement()) {
              statement.execute("DELETE FROM recording");
              assertThatThrownBy(() -> lane.change("commit", c -> {}))
                  .isInstanceOf(StoreException.class)
                  .hasMessageContaining("another process kept it locked for 10 s");
            }
          });
      lane.change("commit", connection -> {});
    }
  }

  @Test
  void fullDisk_leavesTheStoreAsItWas_andTheSameCommitPassesOnceThereIsSpace() throws Exception {
    SqliteFile sqlite = SqliteFile.open(file);
    try (Store store = new SqlStore(sqlite, java.time.InstantSource.system())) {
      store.commit(commit(0, 1));
      sqlite.writing().change("fill the disk", c -> pages(c, "page_count"));
      Commit big = commit(1, 4_000);

      assertThatThrownBy(() -> store.commit(big))
          .isInstanceOf(StoreException.class)
          .hasMessageStartingWith("store " + file + ": could not commit: the disk is full")
          .hasMessageEndingWith("free some space; the next try may succeed");
      assertThat(store.tally(HERON, 0, Long.MAX_VALUE)).isEqualTo(hot(215, 300));
      assertThat(store.accounts()).containsExactly(account(HERON, hot(215, 1)));

      sqlite.writing().change("free some space", c -> pages(c, "1000000"));
      store.commit(big);
      assertThat(store.tally(HERON, 0, Long.MAX_VALUE)).isEqualTo(hot(215, 300L * 4_000));
      assertThat(
              store.saveParts(0, List.of(Part.added("L-014", "liner", Optional.empty(), MORNING))))
          .isTrue();
    }
  }

  private static Commit commit(int first, int until) {
    List<Bucket> credits = new ArrayList<>();
    for (int i = first; i < until; i++) {
      credits.add(bucket(HERON, i, hot(215, 300)));
    }
    Tally total = hot(215, until);
    return new Commit(credits, List.of(), List.of(account(HERON, total)));
  }

  /** Lets the file grow to so many pages and no further, as a disk of that size would. */
  private static void pages(java.sql.Connection connection, String most) throws SQLException {
    try (Statement statement = connection.createStatement()) {
      String pages = most;
      if (most.equals("page_count")) {
        try (java.sql.ResultSet row = statement.executeQuery("PRAGMA page_count")) {
          row.next();
          pages = row.getString(1);
        }
      }
      statement.execute("PRAGMA max_page_count = " + pages);
    }
  }
}
