package meltkeeper.store.sql;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import meltkeeper.store.StoreException;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.sqlite.SQLiteConfig;
import org.sqlite.SQLiteConfig.SynchronousMode;

/**
 * An SQLite database file: a lane to write on, one for long reading, and one for a glance, so that
 * neither a commit nor the look for a new revision ever waits for a scan. Safe for use by several
 * threads; other processes may use the file meanwhile.
 *
 * <p>Each commit is on the disk when it returns (write-ahead log, synchronous FULL): a power cut
 * takes back nothing that was committed. A file that is deleted while it is in use is written anew
 * before the next commit, with all that it held.
 */
final class SqliteFile implements AutoCloseable {

  private static final Logger LOG = LoggerFactory.getLogger(SqliteFile.class);

  /** How long a call waits for another process before it fails. */
  static final int BUSY_MILLIS = 10_000;

  /** A long scan may let the log grow; it is cut back to this afterwards. */
  private static final int LOG_BYTES = 8 << 20;

  /** Waits for the write lock at once; a transaction that asks for it later may have to fail. */
  private static final String BEGIN_WRITING = "BEGIN IMMEDIATE";

  private static final String BEGIN_READING = "BEGIN";

  private final Path path;
  private final Claim claim;
  private volatile Lanes lanes;

  private SqliteFile(Path path, Claim claim, Lanes lanes) {
    this.path = path;
    this.claim = claim;
    this.lanes = lanes;
  }

  /** The open connections, and which files they hold. */
  private record Lanes(Lane writing, Lane reading, Lane glancing, Standing standing) {
    void close() {
      glancing.close();
      reading.close();
      writing.close();
    }
  }

  static SqliteFile open(Path path) {
    Path directory = path.getParent();
    if (directory == null || !Files.isDirectory(directory)) {
      throw new StoreException(
          "store %s: the directory %s does not exist; make it, or name another file"
              .formatted(path, directory));
    }
    if (Files.isDirectory(path)) {
      throw new StoreException(
          "store %s: this is a directory; name a file within it".formatted(path));
    }
    Lanes lanes = lanes(path);
    try {
      return new SqliteFile(path, new Claim(path.toRealPath()), lanes);
    } catch (IOException e) {
      lanes.close();
      throw new StoreException("store %s: it is gone (%s)".formatted(path, e), e);
    }
  }

  private static Lanes lanes(Path path) {
    Lane writing = lane(path, BEGIN_WRITING);
    try {
      writing.change("bring its schema up to date", c -> Migrations.run(path, c));
      return new Lanes(
          writing, lane(path, BEGIN_READING), lane(path, BEGIN_READING), Standing.of(path));
    } catch (StoreException e) {
      writing.close();
      throw e;
    }
  }

  /** For changes; the file is where it was, or there again. */
  Lane writing() {
    return present().writing();
  }

  Lane reading() {
    return lanes.reading();
  }

  Lane glancing() {
    return lanes.glancing();
  }

  Claim claim() {
    return claim;
  }

  /**
   * Looks after the file between two changes: one that was deleted is written anew.
   *
   * @throws StoreException when it cannot be, or when another file stands in its place
   */
  void lookAfter() {
    present();
  }

  private synchronized Lanes present() {
    if (lanes.standing().isUndisturbed(path)) {
      return lanes;
    }
    lanes.standing().refuseAnother(path);
    new Rescue(path).writeAnew(lanes.reading());
    Lanes former = lanes;
    former.close();
    lanes = lanes(path);
    LOG.error("store {}: it was deleted while in use; all that it held was written anew", path);
    return lanes;
  }

  private static Lane lane(Path path, String begin) {
    SQLiteConfig config = new SQLiteConfig();
    config.setBusyTimeout(BUSY_MILLIS);
    config.enforceForeignKeys(true);
    config.setSynchronous(SynchronousMode.FULL);
    config.setJournalSizeLimit(LOG_BYTES);
    try {
      Connection connection = connect(path, config);
      try {
        prepare(path, connection);
      } catch (SQLException | RuntimeException e) {
        connection.close();
        throw e;
      }
      return new Lane(path, connection, begin);
    } catch (SQLException e) {
      throw Trouble.of(path, "open it", e);
    }
  }

  /** A connection as configured; every one of this room is opened here. */
  static Connection connect(Path path, SQLiteConfig config) throws SQLException {
    MachineCode.prepare();
    return config.createConnection("jdbc:sqlite:" + path);
  }

  /** Another program's database, or a newer one of ours, is left exactly as it is. */
  private static void prepare(Path path, Connection connection) throws SQLException {
    Migrations.refuseForeign(path, connection);
    try (Statement statement = connection.createStatement()) {
      statement.execute("PRAGMA journal_mode = WAL");
    }
  }

  @Override
  public synchronized void close() {
    lanes.close();
    claim.close();
  }
}
