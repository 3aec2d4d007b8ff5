package meltkeeper.store.sql;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.util.List;
import meltkeeper.store.Acknowledgement;
import meltkeeper.store.Alert;
import meltkeeper.store.Delivery;
import meltkeeper.store.Episode;
import meltkeeper.store.Posting;

/** Writes alerts and what becomes of them within the transaction of the caller. */
final class AlertWriter {

  private static final String ADD_EPISODE =
      """
      INSERT INTO episode (topic, subject, began_nanos, is_over) VALUES (?, ?, ?, ?)
      ON CONFLICT (topic, subject, began_nanos) DO UPDATE
        SET is_over = max(episode.is_over, excluded.is_over)
      """;

  private static final String THE_EPISODE =
      "(SELECT id FROM episode WHERE topic = ? AND subject = ? AND began_nanos = ?)";

  private static final String ADD_ALERT =
      "INSERT INTO alert (id, episode, phase, number, at_nanos, text) VALUES (?, "
          + THE_EPISODE
          + ", ?, ?, ?, ?) ON CONFLICT (id) DO NOTHING";

  private static final String ADD_DELIVERY =
      """
      INSERT INTO delivery (alert, route, state, attempts, next_nanos, detail)
      VALUES (?, ?, ?, ?, ?, ?)
      """;

  private static final String NOTE =
      """
      UPDATE delivery SET state = ?, attempts = ?, next_nanos = ?, detail = ?
      WHERE alert = ? AND route = ? AND state = 'waiting'
      """;

  private static final String ACKNOWLEDGE =
      """
      UPDATE episode
      SET acknowledged_nanos = coalesce(acknowledged_nanos, ?),
        acknowledged_by = coalesce(acknowledged_by, ?)
      WHERE topic = ? AND subject = ? AND began_nanos = ?
      """;

  private static final String SETTLE =
      "UPDATE episode SET is_settled = 1 WHERE topic = ? AND subject = ? AND began_nanos = ?";

  private final Connection connection;

  AlertWriter(Connection connection) {
    this.connection = connection;
  }

  void post(List<Posting> postings) throws SQLException {
    for (Posting posting : postings) {
      Alert alert = posting.alert();
      Episode episode = alert.episode();
      update(
          ADD_EPISODE,
          episode.topic().label(),
          episode.subject().written(),
          episode.beganNanos(),
          alert.phase() == Alert.Phase.ALL_CLEAR ? 1 : 0);
      int added =
          update(
              ADD_ALERT,
              alert.id(),
              episode.topic().label(),
              episode.subject().written(),
              episode.beganNanos(),
              alert.phase().label(),
              alert.number(),
              alert.atNanos(),
              alert.text());
      if (added > 0) {
        addDeliveries(alert, posting.routes());
      }
    }
  }

  private void addDeliveries(Alert alert, List<String> routes) throws SQLException {
    for (String route : routes) {
      Delivery delivery = Delivery.of(alert, route);
      update(
          ADD_DELIVERY,
          delivery.alertId(),
          route,
          delivery.state().label(),
          delivery.attempts(),
          delivery.nextNanos(),
          delivery.detail());
    }
  }

  void note(Delivery delivery) throws SQLException {
    update(
        NOTE,
        delivery.state().label(),
        delivery.attempts(),
        delivery.nextNanos(),
        delivery.detail(),
        delivery.alertId(),
        delivery.route());
  }

  boolean acknowledge(Episode episode, Acknowledgement acknowledgement) throws SQLException {
    return update(
            ACKNOWLEDGE,
            acknowledgement.atNanos(),
            acknowledgement.by(),
            episode.topic().label(),
            episode.subject().written(),
            episode.beganNanos())
        > 0;
  }

  boolean settle(Episode episode) throws SQLException {
    return update(
            SETTLE, episode.topic().label(), episode.subject().written(), episode.beganNanos())
        > 0;
  }

  private int update(String sql, Object... arguments) throws SQLException {
    try (PreparedStatement statement = connection.prepareStatement(sql)) {
      for (int i = 0; i < arguments.length; i++) {
        statement.setObject(i + 1, arguments[i]);
      }
      return statement.executeUpdate();
    }
  }
}
