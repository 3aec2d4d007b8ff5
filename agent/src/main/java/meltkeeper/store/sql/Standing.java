package meltkeeper.store.sql;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.Optional;
import meltkeeper.store.StoreException;

/**
 * Which files stood under a database's names when it was opened. An open file lives on when its
 * name is deleted, and what is written to it then is lost with the process; so the names are looked
 * at before each change. Where the system has no keys of files, only a missing name is noticed.
 *
 * @param database key of the database file; empty when it is not there, or has none
 * @param log key of its write-ahead log, likewise
 */
record Standing(Optional<Object> database, Optional<Object> log) {

  /** What stands there now. */
  static Standing of(Path path) {
    return new Standing(key(path), key(log(path)));
  }

  static Path log(Path path) {
    return path.resolveSibling(path.getFileName() + "-wal");
  }

  boolean isUndisturbed(Path path) {
    Standing now = of(path);
    return Files.exists(path)
        && database.equals(now.database)
        && (log.isEmpty() || log.equals(now.log));
  }

  /**
   * Accepts a deleted file, but not another one in its place.
   *
   * @throws StoreException when there is one
   */
  void refuseAnother(Path path) {
    if (Files.exists(path) && !database.equals(key(path))) {
      throw new StoreException(
          ("store %s: another file was put in its place while it was in use; stop the agent and"
                  + " start it again to use that one, or put the former one back")
              .formatted(path));
    }
  }

  private static Optional<Object> key(Path file) {
    try {
      return fileKey(file);
    } catch (IOException e) {
      throw new StoreException("store %s: it cannot be looked at (%s)".formatted(file, e), e);
    }
  }

  /** What the system tells files apart by; empty when there is no such file. */
  static Optional<Object> fileKey(Path file) throws IOException {
    try {
      return Optional.ofNullable(Files.readAttributes(file, BasicFileAttributes.class).fileKey());
    } catch (NoSuchFileException e) {
      return Optional.empty();
    }
  }
}
