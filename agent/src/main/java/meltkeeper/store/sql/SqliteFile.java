package meltkeeper.store.sql;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import meltkeeper.store.StoreException;
import org.sqlite.SQLiteConfig;
import org.sqlite.SQLiteConfig.SynchronousMode;

/**
 * An SQLite database file: a lane to write on, one for long reading, and one for a glance, so that
 * neither a commit nor the look for a new revision ever waits for a scan. Safe for use by several
 * threads; other processes may use the file meanwhile.
 *
 * <p>Each commit is on the disk when it returns (write-ahead log, synchronous FULL): a power cut
 * takes back nothing that was committed.
 */
record SqliteFile(Path path, Lane writing, Lane reading, Lane glancing, Claim claim)
    implements AutoCloseable {

  /** How long a call waits for another process before it fails. */
  static final int BUSY_MILLIS = 10_000;

  /** A long scan may let the log grow; it is cut back to this afterwards. */
  private static final int LOG_BYTES = 8 << 20;

  /** Waits for the write lock at once; a transaction that asks for it later may have to fail. */
  private static final String BEGIN_WRITING = "BEGIN IMMEDIATE";

  private static final String BEGIN_READING = "BEGIN";

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
    Lane writing = lane(path, BEGIN_WRITING);
    try {
      writing.change("bring its schema up to date", c -> Migrations.run(path, c));
      return new SqliteFile(
          path,
          writing,
          lane(path, BEGIN_READING),
          lane(path, BEGIN_READING),
          new Claim(path.toRealPath()));
    } catch (StoreException e) {
      writing.close();
      throw e;
    } catch (IOException e) {
      writing.close();
      throw new StoreException("store %s: it is gone (%s)".formatted(path, e), e);
    }
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
  public void close() {
    glancing.close();
    reading.close();
    writing.close();
    claim.close();
  }
}
