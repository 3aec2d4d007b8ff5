package meltkeeper.store.sql;

import java.sql.ResultSet;
import java.sql.SQLDataException;
import java.sql.SQLException;
import java.util.Optional;
import meltkeeper.store.Acknowledgement;
import meltkeeper.store.Alert;
import meltkeeper.store.AlertTopic;
import meltkeeper.store.Delivery;
import meltkeeper.store.Episode;
import meltkeeper.store.Subject;

/** Columns of {@code episode}, {@code alert} and {@code delivery}, there and back. */
final class AlertRow {

  /** What every query of alerts selects first, in the order that {@link #alert} reads. */
  static final String COLUMNS =
      """
      SELECT e.topic, e.subject, e.began_nanos, e.is_over, e.acknowledged_nanos, e.acknowledged_by,
        a.phase, a.number, a.at_nanos, a.text
      """;

  private static final int PHASE = 7;

  private AlertRow() {}

  static Alert alert(ResultSet row) throws SQLException {
    return new Alert(
        episode(row),
        known("phase", row.getString(PHASE), Alert.Phase.of(row.getString(PHASE))),
        row.getInt(PHASE + 1),
        row.getLong(PHASE + 2),
        row.getString(PHASE + 3));
  }

  static Episode episode(ResultSet row) throws SQLException {
    return new Episode(
        known("topic", row.getString(1), AlertTopic.of(row.getString(1))),
        subject(row.getString(2)),
        row.getLong(3));
  }

  private static Subject subject(String written) throws SQLDataException {
    try {
      return Subject.read(written);
    } catch (RuntimeException e) {
      throw new SQLDataException("an alert has the unknown subject " + written, e);
    }
  }

  static boolean isOver(ResultSet row) throws SQLException {
    return row.getBoolean(4);
  }

  static Optional<Acknowledgement> acknowledgement(ResultSet row) throws SQLException {
    String by = row.getString(6);
    return by == null ? Optional.empty() : Optional.of(new Acknowledgement(row.getLong(5), by));
  }

  /** The delivery in five columns that begin at {@code first}. */
  static Delivery delivery(String alertId, ResultSet row, int first) throws SQLException {
    String state = row.getString(first + 1);
    return new Delivery(
        alertId,
        row.getString(first),
        known("state of a delivery", state, Delivery.State.of(state)),
        row.getInt(first + 2),
        row.getLong(first + 3),
        row.getString(first + 4));
  }

  private static <T> T known(String what, String word, Optional<T> value) throws SQLDataException {
    return value.orElseThrow(
        () -> new SQLDataException("an alert has the unknown " + what + " " + word));
  }
}
