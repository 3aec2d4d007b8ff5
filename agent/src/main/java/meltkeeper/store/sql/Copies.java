package meltkeeper.store.sql;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Optional;
import meltkeeper.store.StoreException;
import org.sqlite.SQLiteConfig;

/**
 * Copies of a store: one file each, whole and sound or not there at all, also after a power cut. A
 * copy is taken within one reading transaction, while agents write the store.
 */
public final class Copies {

  private static final DateTimeFormatter STAMP =
      DateTimeFormatter.ofPattern("yyyyMMdd'T'HHmmss'Z'").withZone(ZoneOffset.UTC);

  private static final List<String> COMPANIONS = List.of("-wal", "-shm");

  private Copies() {}

  /**
   * Writes a copy to a new file.
   *
   * @throws StoreException when the store is not there, the file is, or the copy fails; then there
   *     is no file
   */
  public static void copy(String jdbcUrl, Path to) {
    Path store = Stores.path(jdbcUrl);
    if (!Files.isRegularFile(store)) {
      throw new StoreException(
          "store %s: it is not there, so there is nothing to copy; name it in the configuration"
              .formatted(store));
    }
    if (Files.exists(to)) {
      throw new StoreException("copy %s: it is there already; name a new file".formatted(to));
    }
    Path part = sibling(to.toAbsolutePath(), ".part");
    try {
      Files.deleteIfExists(part);
      vacuumInto(store, part);
      checkSound(part);
      moveSynced(part, to.toAbsolutePath());
    } catch (IOException e) {
      throw new StoreException("copy %s: could not write it (%s)".formatted(to, e), e);
    } finally {
      part.toFile().delete();
    }
  }

  /**
   * Puts a copy in the store's place. What was there is kept beside it.
   *
   * @return where the former store is kept, if there was one
   * @throws StoreException when the copy is unsound or not ours, or an agent writes to the store;
   *     nothing was changed then
   */
  public static Optional<Path> restore(String jdbcUrl, Path from, Instant now) {
    Path store = Stores.path(jdbcUrl);
    Path fresh = sibling(store, ".restoring");
    try {
      checkWhole(from);
      Files.copy(from, fresh, StandardCopyOption.REPLACE_EXISTING);
      checkSound(fresh);
      try (Claim claim = new Claim(real(store))) {
        claim.take();
        Optional<Path> kept = setAside(store, ".replaced-" + STAMP.format(now));
        moveSynced(fresh, store);
        return kept;
      }
    } catch (IOException e) {
      throw new StoreException(
          "store %s: could not put %s in its place (%s)".formatted(store, from, e), e);
    } finally {
      fresh.toFile().delete();
    }
  }

  private static void checkWhole(Path from) throws IOException {
    if (!Files.isRegularFile(from)) {
      throw new StoreException("copy %s: there is no such file; name another".formatted(from));
    }
    Path log = sibling(from, "-wal");
    if (Files.exists(log) && Files.size(log) > 0) {
      throw new StoreException(
          "copy %s: its newest commits are still in %s; take a copy of it by meltkeeper backup"
              .formatted(from, log));
    }
  }

  private static void vacuumInto(Path store, Path to) {
    try (Connection connection = open(store)) {
      Migrations.refuseForeign(store, connection);
      try (PreparedStatement vacuum = connection.prepareStatement("VACUUM INTO ?")) {
        vacuum.setString(1, to.toString());
        vacuum.execute();
      }
    } catch (SQLException e) {
      throw Trouble.of(store, "copy it to " + to, e);
    }
  }

  private static void checkSound(Path copy) {
    try (Connection connection = open(copy);
        Statement statement = connection.createStatement()) {
      Migrations.refuseForeign(copy, connection);
      try (ResultSet row = statement.executeQuery("PRAGMA integrity_check(1)")) {
        if (!row.next() || !row.getString(1).equals("ok")) {
          throw new StoreException("copy %s: it is damaged; use another".formatted(copy));
        }
      }
      try (ResultSet row = statement.executeQuery("PRAGMA application_id")) {
        if (!row.next() || row.getInt(1) != Migrations.APPLICATION_ID) {
          throw new StoreException("copy %s: it is empty; use another".formatted(copy));
        }
      }
    } catch (SQLException e) {
      throw Trouble.of(copy, "check it", e);
    }
  }

  private static Connection open(Path file) throws SQLException {
    SQLiteConfig config = new SQLiteConfig();
    config.setBusyTimeout(SqliteFile.BUSY_MILLIS);
    return SqliteFile.connect(file, config);
  }

  /** The log first: no log may ever stand beside a file that it does not belong to. */
  private static Optional<Path> setAside(Path store, String suffix) throws IOException {
    for (String companion : COMPANIONS) {
      Path file = sibling(store, companion);
      if (Files.exists(file)) {
        Files.move(file, sibling(store, suffix + companion));
      }
    }
    if (!Files.exists(store)) {
      return Optional.empty();
    }
    return Optional.of(Files.move(store, sibling(store, suffix)));
  }

  private static void moveSynced(Path from, Path to) throws IOException {
    try (FileChannel file = FileChannel.open(from, StandardOpenOption.WRITE)) {
      file.force(true);
    }
    try {
      Files.move(from, to, StandardCopyOption.ATOMIC_MOVE);
    } catch (AtomicMoveNotSupportedException e) {
      throw new IOException("its folder moves no file in one step", e);
    }
    Path folder = to.getParent();
    if (folder != null) {
      try (FileChannel directory = FileChannel.open(folder, StandardOpenOption.READ)) {
        directory.force(true);
      }
    }
  }

  private static Path real(Path store) throws IOException {
    Path folder = store.getParent();
    Path name = store.getFileName();
    if (folder == null || name == null) {
      throw new IOException("it has no folder");
    }
    return Files.exists(store) ? store.toRealPath() : folder.toRealPath().resolve(name);
  }

  private static Path sibling(Path file, String suffix) {
    return file.resolveSibling(file.getFileName() + suffix);
  }
}
