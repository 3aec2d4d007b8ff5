package meltkeeper.store.sql;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;

/** A database file as SQLite itself sees it, past the store. */
final class RawFile {

  private RawFile() {}

  static void execute(Path file, String... statements) throws SQLException {
    try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file);
        Statement statement = connection.createStatement()) {
      for (String sql : statements) {
        statement.execute(sql);
      }
    }
  }

  /** Each row's columns, joined by bars. */
  static List<String> rows(Path file, String query) throws SQLException {
    try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file);
        Statement statement = connection.createStatement();
        ResultSet row = statement.executeQuery(query)) {
      List<String> rows = new ArrayList<>();
      while (row.next()) {
        List<String> columns = new ArrayList<>();
        for (int i = 1; i <= row.getMetaData().getColumnCount(); i++) {
          columns.add(String.valueOf(row.getString(i)));
        }
        rows.add(String.join("|", columns));
      }
      return rows;
    }
  }
}
