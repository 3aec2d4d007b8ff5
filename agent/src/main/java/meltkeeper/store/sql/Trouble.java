package meltkeeper.store.sql;

import java.nio.file.Path;
import java.sql.SQLDataException;
import java.sql.SQLException;
import meltkeeper.store.StoreException;
import org.sqlite.SQLiteException;

/**
 * Why SQLite could not do what was asked, in words for a person.
 *
 * @param reason what stands in the way
 * @param mend what removes it
 */
record Trouble(String reason, String mend) {

  /** Extended result codes keep the primary one in their lowest byte (sqlite.org/rescode.html). */
  private static final int PRIMARY = 0xff;

  /** The exception of a store that failed. */
  static StoreException of(Path file, String task, SQLException cause) {
    return of(cause).in(file, task, cause);
  }

  private static Trouble of(SQLException cause) {
    if (cause instanceof SQLDataException) {
      return new Trouble(
          "what it holds is unreadable",
          "use the version of the program that wrote it, or put a backup in its place");
    }
    if (!(cause instanceof SQLiteException sqlite)) {
      return new Trouble("the database driver failed", "see its own words");
    }
    return switch (sqlite.getResultCode().code & PRIMARY) {
      case 5, 6 ->
          new Trouble(
              "another process kept it locked for " + SqliteFile.BUSY_MILLIS / 1000 + " s",
              "find the program that holds it open, and try again");
      case 8 ->
          new Trouble(
              "it is read-only",
              "let this user write to the file and to its directory, on a disk that is mounted"
                  + " for writing");
      case 10 -> new Trouble("the disk failed", "check the disk or SD card, then try again");
      case 11 ->
          new Trouble(
              "the file is damaged",
              "put a backup in its place, or move it away to begin a new one");
      case 13 -> new Trouble("the disk is full", "free some space; the next try may succeed");
      case 14 ->
          new Trouble(
              "the file cannot be opened",
              "check that its directory exists and that this user may write there");
      case 26 ->
          new Trouble(
              "it is no SQLite database",
              "name another file for the store, or move this one away to begin a new one");
      default ->
          new Trouble("the database refused", "this is a fault of Meltkeeper's own: report it");
    };
  }

  private StoreException in(Path file, String task, SQLException cause) {
    return new StoreException(
        "store %s: could not %s: %s (%s); %s"
            .formatted(file, task, reason, cause.getMessage(), mend),
        cause);
  }
}
