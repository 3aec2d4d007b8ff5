package meltkeeper.store.sql;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;

/** Forgets old alerts within the transaction of the caller. */
record AlertPruner(Connection connection) {

  private static final String WAITS =
      """
      SELECT 1 FROM delivery AS d WHERE d.alert = a.id AND d.state = 'waiting'
      """;

  private static final String OLD_EPISODES =
      """
      SELECT e.id FROM episode AS e
      WHERE e.is_over = 1
        AND NOT EXISTS (
          SELECT 1 FROM alert AS a
          WHERE a.episode = e.id AND (a.at_nanos >= ? OR EXISTS (%s)))
      ORDER BY e.id LIMIT ?
      """
          .formatted(WAITS);

  private static final String OLD_REMINDERS =
      """
      SELECT a.id FROM alert AS a JOIN episode AS e ON e.id = a.episode
      WHERE e.is_over = 0 AND a.phase = 'reminder' AND a.at_nanos < ?
        AND a.position < (SELECT max(b.position) FROM alert AS b WHERE b.episode = e.id)
        AND NOT EXISTS (%s)
      """
          .formatted(WAITS);

  private static final List<String> FORGET_EPISODE =
      List.of(
          "DELETE FROM delivery WHERE alert IN (SELECT id FROM alert WHERE episode = ?)",
          "DELETE FROM alert WHERE episode = ?",
          "DELETE FROM episode WHERE id = ?");

  private static final List<String> FORGET_ALERT =
      List.of("DELETE FROM delivery WHERE alert = ?", "DELETE FROM alert WHERE id = ?");

  /** How many episodes are gone. */
  int prune(long beforeNanos, int most) throws SQLException {
    List<Object> episodes = ids(OLD_EPISODES, beforeNanos, most);
    forget(episodes, FORGET_EPISODE);
    forget(ids(OLD_REMINDERS, beforeNanos), FORGET_ALERT);
    return episodes.size();
  }

  private List<Object> ids(String query, Object... arguments) throws SQLException {
    try (PreparedStatement statement = connection.prepareStatement(query)) {
      for (int i = 0; i < arguments.length; i++) {
        statement.setObject(i + 1, arguments[i]);
      }
      try (ResultSet row = statement.executeQuery()) {
        List<Object> ids = new ArrayList<>();
        while (row.next()) {
          ids.add(row.getObject(1));
        }
        return ids;
      }
    }
  }

  private void forget(List<Object> ids, List<String> deletions) throws SQLException {
    for (String deletion : deletions) {
      try (PreparedStatement statement = connection.prepareStatement(deletion)) {
        for (Object id : ids) {
          statement.setObject(1, id);
          statement.executeUpdate();
        }
      }
    }
  }
}
