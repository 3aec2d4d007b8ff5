package meltkeeper.store.sql;

import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.time.InstantSource;
import meltkeeper.protocol.Fault;
import meltkeeper.store.Store;
import meltkeeper.store.StoreException;

/** Opens the store that a JDBC URL names. */
public final class Stores {

  private static final String SQLITE = "jdbc:sqlite:";
  private static final String ALLOWED =
      SQLITE + " and the path of a file, such as " + SQLITE + "meltkeeper.db";

  private Stores() {}

  /**
   * Opens a store, after making it or bringing its schema up to date where that is due.
   *
   * @param jdbcUrl {@code jdbc:sqlite:PATH}, the path being relative to the working directory
   * @throws StoreException when the URL names no store that we know, or the store cannot be opened:
   *     it says why, and what mends it
   */
  public static Store open(String jdbcUrl) {
    return open(jdbcUrl, InstantSource.system());
  }

  /** The same with a clock that tells when changes of parts were recorded. */
  static SqlStore open(String jdbcUrl, InstantSource clock) {
    return new SqlStore(SqliteFile.open(path(jdbcUrl)), clock);
  }

  static Path path(String jdbcUrl) {
    String name = jdbcUrl.startsWith(SQLITE) ? jdbcUrl.substring(SQLITE.length()) : "";
    if (name.isBlank() || name.startsWith(":") || name.startsWith("file:") || name.contains("?")) {
      throw notAllowed(jdbcUrl);
    }
    try {
      return Path.of(name).toAbsolutePath().normalize();
    } catch (InvalidPathException e) {
      throw notAllowed(jdbcUrl);
    }
  }

  private static StoreException notAllowed(String jdbcUrl) {
    return new StoreException(Fault.of("store", jdbcUrl, ALLOWED).toString());
  }
}
