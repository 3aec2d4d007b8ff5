package meltkeeper.store.sql;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import java.util.Optional;
import java.util.TreeMap;
import meltkeeper.part.Because;
import meltkeeper.part.Exposure;
import meltkeeper.part.Exposure.Heat;
import meltkeeper.part.Part;
import meltkeeper.part.PartEvent;
import meltkeeper.part.PriorPast;
import meltkeeper.protocol.HotEnd;

/** Reads parts as they stand at the newest revision, within the transaction of the caller. */
final class PartReader {

  private static final String PARTS =
      "SELECT id, kind, variant, added_nanos, paper_ending FROM current_part";

  private static final String PAPER =
      """
      SELECT p.part, p.band, p.nanos, p.micro_celsius_seconds
      FROM part_paper AS p
      JOIN current_part AS c ON c.id = p.part AND c.revision = p.revision
      """;

  private static final String EVENTS =
      """
      SELECT e.part, e.at_nanos, e.what, h.printer, h.number, e.past_hours, e.past_spread_hours,
        e.past_celsius, e.because, e.excused, e.restores
      FROM part_event AS e
      JOIN current_part AS c ON c.id = e.part AND c.revision = e.revision
      LEFT JOIN hot_end AS h ON h.id = e.hot_end
      ORDER BY e.part, e.position
      """;

  private final Connection connection;

  PartReader(Connection connection) {
    this.connection = connection;
  }

  List<Part> parts() throws SQLException {
    Map<String, NavigableMap<Integer, Heat>> paper = paper();
    Map<String, List<PartEvent>> events = events();
    NavigableMap<String, Part> parts = new TreeMap<>();
    try (PreparedStatement query = connection.prepareStatement(PARTS);
        ResultSet row = query.executeQuery()) {
      while (row.next()) {
        String id = row.getString(1);
        Optional<String> ending = Optional.ofNullable(row.getString(5));
        Optional<Part.PaperPast> past = Optional.empty();
        if (ending.isPresent()) {
          Exposure exposure = new Exposure(paper.getOrDefault(id, new TreeMap<>()));
          past = Optional.of(new Part.PaperPast(exposure, PartWords.ending(ending.get())));
        }
        parts.put(
            id,
            new Part(
                id,
                row.getString(2),
                Optional.ofNullable(row.getString(3)),
                row.getLong(4),
                past,
                events.getOrDefault(id, List.of())));
      }
    }
    return List.copyOf(parts.values());
  }

  private Map<String, NavigableMap<Integer, Heat>> paper() throws SQLException {
    Map<String, NavigableMap<Integer, Heat>> paper = new HashMap<>();
    try (PreparedStatement query = connection.prepareStatement(PAPER);
        ResultSet row = query.executeQuery()) {
      while (row.next()) {
        paper
            .computeIfAbsent(row.getString(1), id -> new TreeMap<>())
            .put(row.getInt(2), new Heat(row.getLong(3), row.getLong(4)));
      }
    }
    return paper;
  }

  private Map<String, List<PartEvent>> events() throws SQLException {
    Map<String, List<PartEvent>> events = new HashMap<>();
    try (PreparedStatement query = connection.prepareStatement(EVENTS);
        ResultSet row = query.executeQuery()) {
      while (row.next()) {
        events
            .computeIfAbsent(row.getString(1), id -> new ArrayList<>())
            .add(eventRow(row).event());
      }
    }
    return events;
  }

  private static EventRow eventRow(ResultSet row) throws SQLException {
    Optional<String> printer = Optional.ofNullable(row.getString(4));
    Optional<HotEnd> hotEnd = Optional.empty();
    if (printer.isPresent()) {
      hotEnd = Optional.of(new HotEnd(printer.get(), row.getInt(5)));
    }
    Optional<Double> hours = number(row, 6);
    Optional<PriorPast> past = Optional.empty();
    if (hours.isPresent()) {
      past = Optional.of(new PriorPast(hours.get(), row.getDouble(7), row.getDouble(8)));
    }
    Optional<String> word = Optional.ofNullable(row.getString(9));
    Optional<Because> because = Optional.empty();
    if (word.isPresent()) {
      because = Optional.of(PartWords.because(word.get()));
    }
    return new EventRow(
        row.getLong(2),
        row.getString(3),
        hotEnd,
        past,
        because,
        number(row, 10).map(excused -> excused != 0),
        number(row, 11));
  }

  private static Optional<Double> number(ResultSet row, int column) throws SQLException {
    double value = row.getDouble(column);
    return row.wasNull() ? Optional.empty() : Optional.of(value);
  }
}
