package meltkeeper.store.sql;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import meltkeeper.store.Acknowledgement;
import meltkeeper.store.Alert;
import meltkeeper.store.AlertEntry;
import meltkeeper.store.Delivery;
import meltkeeper.store.Episode;
import meltkeeper.store.Letter;
import meltkeeper.store.OpenEpisode;
import meltkeeper.store.Outbox;
import meltkeeper.store.Posting;

/** The outbox in an SQL database. */
record SqlOutbox(SqliteFile file) implements Outbox {

  private static final int AFTER_ALERT = 11;

  private static final String WAITING =
      AlertRow.COLUMNS
          + """
            , d.route, d.state, d.attempts, d.next_nanos, d.detail
          FROM delivery AS d JOIN alert AS a ON a.id = d.alert JOIN episode AS e ON e.id = a.episode
          WHERE d.route = ? AND d.state = 'waiting'
          ORDER BY a.position
          LIMIT ?
          """;

  private static final String WAITED_ON =
      "SELECT route, count(*) FROM delivery WHERE state = 'waiting' GROUP BY route";

  private static final String OPEN =
      AlertRow.COLUMNS
          + """
            , EXISTS (SELECT 1 FROM delivery AS d WHERE d.alert = a.id)
          FROM episode AS e JOIN alert AS a ON a.episode = e.id
          WHERE e.is_over = 0
          ORDER BY a.position
          """;

  private static final String LATEST =
      AlertRow.COLUMNS
          + """
            FROM alert AS a JOIN episode AS e ON e.id = a.episode
          ORDER BY a.position DESC
          LIMIT ?
          """;

  private static final String SETTLED =
      "SELECT topic, subject, began_nanos FROM episode WHERE is_settled = 1";

  private static final String DELIVERIES =
      """
      SELECT route, state, attempts, next_nanos, detail FROM delivery WHERE alert = ? ORDER BY route
      """;

  @Override
  public void post(List<Posting> postings) {
    file.claim().take();
    file.writing().change("post alerts", c -> new AlertWriter(c).post(postings));
  }

  @Override
  public void note(List<Delivery> deliveries) {
    file.writing()
        .change(
            "note a delivery",
            connection -> {
              AlertWriter writer = new AlertWriter(connection);
              for (Delivery delivery : deliveries) {
                writer.note(delivery);
              }
            });
  }

  @Override
  public int prune(long beforeNanos, int most) {
    return file.writing()
        .run("forget old alerts", c -> new AlertPruner(c).prune(beforeNanos, most));
  }

  @Override
  public boolean acknowledge(Episode episode, Acknowledgement acknowledgement) {
    return file.writing()
        .run("acknowledge an alert", c -> new AlertWriter(c).acknowledge(episode, acknowledgement));
  }

  @Override
  public boolean settle(Episode episode) {
    return file.writing().run("settle an episode", c -> new AlertWriter(c).settle(episode));
  }

  @Override
  public Set<Episode> settled() {
    return Set.copyOf(
        file.reading().run("read the settled episodes", c -> rows(c, SETTLED, AlertRow::episode)));
  }

  @Override
  public List<Letter> waiting(String route, int most) {
    return file.glancing()
        .run(
            "read what waits for " + route,
            connection -> rows(connection, WAITING, SqlOutbox::letter, route, most));
  }

  private static Letter letter(ResultSet row) throws SQLException {
    Alert alert = AlertRow.alert(row);
    return new Letter(
        alert,
        AlertRow.delivery(alert.id(), row, AFTER_ALERT),
        AlertRow.acknowledgement(row).isPresent(),
        AlertRow.isOver(row));
  }

  @Override
  public Map<String, Integer> waiting() {
    return file.glancing()
        .run(
            "read how much waits on each route",
            connection -> {
              Map<String, Integer> waiting = new TreeMap<>();
              rows(connection, WAITED_ON, row -> Map.entry(row.getString(1), row.getInt(2)))
                  .forEach(route -> waiting.put(route.getKey(), route.getValue()));
              return waiting;
            });
  }

  private record Told(Alert alert, boolean acknowledged, boolean hasCalled) {}

  @Override
  public List<OpenEpisode> open() {
    List<Told> told =
        file.glancing()
            .run(
                "read the open alerts",
                c ->
                    rows(
                        c,
                        OPEN,
                        row ->
                            new Told(
                                AlertRow.alert(row),
                                AlertRow.acknowledgement(row).isPresent(),
                                row.getBoolean(AFTER_ALERT))));
    Map<Episode, OpenEpisode> open = new LinkedHashMap<>();
    for (Told one : told) {
      open.merge(
          one.alert().episode(),
          new OpenEpisode(one.alert(), one.hasCalled(), one.acknowledged()),
          (before, now) ->
              new OpenEpisode(
                  now.latest(), before.hasCalled() || now.hasCalled(), now.isAcknowledged()));
    }
    return List.copyOf(open.values());
  }

  @Override
  public List<AlertEntry> latest(int most) {
    return file.reading()
        .run(
            "read the alerts",
            connection -> {
              List<AlertEntry> bare = rows(connection, LATEST, SqlOutbox::withoutDeliveries, most);
              List<AlertEntry> entries = new ArrayList<>();
              for (AlertEntry entry : bare) {
                String id = entry.alert().id();
                entries.add(
                    new AlertEntry(
                        entry.alert(),
                        rows(connection, DELIVERIES, row -> AlertRow.delivery(id, row, 1), id),
                        entry.acknowledged()));
              }
              return entries;
            });
  }

  private static AlertEntry withoutDeliveries(ResultSet row) throws SQLException {
    return new AlertEntry(AlertRow.alert(row), List.of(), AlertRow.acknowledgement(row));
  }

  /** Reads one row. */
  @FunctionalInterface
  private interface Reader<T> {
    T read(ResultSet row) throws SQLException;
  }

  private static <T> List<T> rows(
      Connection connection, String query, Reader<T> reader, Object... arguments)
      throws SQLException {
    try (PreparedStatement statement = connection.prepareStatement(query)) {
      for (int i = 0; i < arguments.length; i++) {
        statement.setObject(i + 1, arguments[i]);
      }
      try (ResultSet row = statement.executeQuery()) {
        List<T> rows = new ArrayList<>();
        while (row.next()) {
          rows.add(reader.read(row));
        }
        return List.copyOf(rows);
      }
    }
  }
}
