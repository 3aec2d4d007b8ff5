package meltkeeper.store.sql;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.OptionalLong;
import meltkeeper.protocol.HotEnd;

/** The numbers that stand for hot ends in the other tables. */
final class HotEnds {

  private HotEnds() {}

  static OptionalLong find(Connection connection, HotEnd hotEnd) throws SQLException {
    try (PreparedStatement query =
        connection.prepareStatement("SELECT id FROM hot_end WHERE printer = ? AND number = ?")) {
      query.setString(1, hotEnd.printer());
      query.setInt(2, hotEnd.index());
      try (ResultSet row = query.executeQuery()) {
        return row.next() ? OptionalLong.of(row.getLong(1)) : OptionalLong.empty();
      }
    }
  }

  static long findOrAdd(Connection connection, HotEnd hotEnd) throws SQLException {
    OptionalLong known = find(connection, hotEnd);
    if (known.isPresent()) {
      return known.getAsLong();
    }
    try (PreparedStatement insert =
        connection.prepareStatement(
            "INSERT INTO hot_end (printer, number) VALUES (?, ?) RETURNING id")) {
      insert.setString(1, hotEnd.printer());
      insert.setInt(2, hotEnd.index());
      try (ResultSet row = insert.executeQuery()) {
        row.next();
        return row.getLong(1);
      }
    }
  }
}
