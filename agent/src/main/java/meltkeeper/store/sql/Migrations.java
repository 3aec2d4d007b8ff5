package meltkeeper.store.sql;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import meltkeeper.store.StoreException;

/**
 * Brings a database file to the schema that this program knows. Script {@code V3.sql} leads from
 * version 2 to 3; a published script never changes. SQLite's {@code user_version} holds the
 * version, {@code application_id} says that the file is ours.
 */
final class Migrations {

  /** {@code Melt} in ASCII. */
  static final int APPLICATION_ID = 0x4D656C74;

  private static final List<String> SCRIPTS = scripts();

  private Migrations() {}

  /** The version that this program works with. */
  static int known() {
    return SCRIPTS.size();
  }

  /**
   * Refuses, without touching it, a file that another program or a newer version of this one made.
   */
  static void refuseForeign(Path path, Connection connection) throws SQLException {
    // In this order: another process may make the file between the two questions.
    boolean isEmpty = number(connection, "SELECT count(*) FROM sqlite_schema") == 0;
    int application = number(connection, "PRAGMA application_id");
    boolean isNew = isEmpty && application == 0;
    if (!isNew && application != APPLICATION_ID) {
      throw new StoreException(
          "store %s: this database belongs to another program; name another file".formatted(path));
    }
    int found = number(connection, "PRAGMA user_version");
    if (found > known()) {
      throw new StoreException(
          ("store %s: its schema is version %d, this program knows versions up to %d; "
                  + "install the newer program that wrote it, or name another file")
              .formatted(path, found, known()));
    }
  }

  /** Carries out what is missing, within the transaction of the caller. */
  static void run(Path path, Connection connection) throws SQLException {
    refuseForeign(path, connection);
    int found = number(connection, "PRAGMA user_version");
    try (Statement statement = connection.createStatement()) {
      for (String script : SCRIPTS.subList(found, known())) {
        statement.executeUpdate(script);
      }
      if (found < known()) {
        statement.executeUpdate("PRAGMA application_id = " + APPLICATION_ID);
        statement.executeUpdate("PRAGMA user_version = " + known());
      }
    }
  }

  private static int number(Connection connection, String query) throws SQLException {
    try (Statement statement = connection.createStatement();
        ResultSet row = statement.executeQuery(query)) {
      return row.next() ? row.getInt(1) : 0;
    }
  }

  private static List<String> scripts() {
    List<String> scripts = new ArrayList<>();
    try {
      while (true) {
        String name = "sqlite/V" + (scripts.size() + 1) + ".sql";
        try (InputStream script = Migrations.class.getResourceAsStream(name)) {
          if (script == null) {
            return List.copyOf(scripts);
          }
          scripts.add(new String(script.readAllBytes(), StandardCharsets.UTF_8));
        }
      }
    } catch (IOException e) {
      throw new UncheckedIOException("the program's own schema is unreadable", e);
    }
  }
}
