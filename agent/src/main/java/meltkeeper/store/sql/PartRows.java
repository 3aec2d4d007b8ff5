package meltkeeper.store.sql;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.sql.Types;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import meltkeeper.part.Exposure.Heat;
import meltkeeper.part.Part;
import meltkeeper.part.PartEvent;

/** Adds parts as they stand at one revision, within the transaction of the caller. */
final class PartRows {

  private static final String PART =
      """
      INSERT INTO part (id, revision, kind, variant, added_nanos, paper_ending)
      VALUES (?, ?, ?, ?, ?, ?)
      """;

  private static final String PAPER =
      """
      INSERT INTO part_paper (part, revision, band, nanos, micro_celsius_seconds)
      VALUES (?, ?, ?, ?, ?)
      """;

  private static final String EVENT =
      """
      INSERT INTO part_event (part, revision, position, at_nanos, what, hot_end, past_hours,
        past_spread_hours, past_celsius, because, excused, restores)
      VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)
      """;

  private final Connection connection;
  private final long revision;

  PartRows(Connection connection, long revision) {
    this.connection = connection;
    this.revision = revision;
  }

  void add(Part part) throws SQLException {
    try (PreparedStatement insert = connection.prepareStatement(PART)) {
      insert.setString(1, part.id());
      insert.setLong(2, revision);
      insert.setString(3, part.kind());
      set(insert, 4, part.variant(), Types.VARCHAR);
      insert.setLong(5, part.addedNanos());
      set(insert, 6, part.paper().map(paper -> PartWords.of(paper.ending())), Types.VARCHAR);
      insert.executeUpdate();
    }
    if (part.paper().isPresent()) {
      addPaper(part, part.paper().get());
    }
    for (int position = 0; position < part.events().size(); position++) {
      addEvent(part, position, part.events().get(position));
    }
  }

  private void addPaper(Part part, Part.PaperPast paper) throws SQLException {
    try (PreparedStatement insert = connection.prepareStatement(PAPER)) {
      for (Map.Entry<Integer, Heat> band : paper.exposure().bands().entrySet()) {
        insert.setString(1, part.id());
        insert.setLong(2, revision);
        insert.setInt(3, band.getKey());
        insert.setLong(4, band.getValue().nanos());
        insert.setLong(5, band.getValue().microCelsiusSeconds());
        insert.executeUpdate();
      }
    }
  }

  private void addEvent(Part part, int position, PartEvent event) throws SQLException {
    EventRow row = EventRow.of(event);
    OptionalLong hotEnd =
        row.hotEnd().isPresent()
            ? OptionalLong.of(HotEnds.findOrAdd(connection, row.hotEnd().get()))
            : OptionalLong.empty();
    try (PreparedStatement insert = connection.prepareStatement(EVENT)) {
      insert.setString(1, part.id());
      insert.setLong(2, revision);
      insert.setInt(3, position);
      insert.setLong(4, event.atNanos());
      insert.setString(5, row.what());
      set(
          insert,
          6,
          hotEnd.isPresent() ? Optional.of(hotEnd.getAsLong()) : Optional.empty(),
          Types.BIGINT);
      set(insert, 7, row.past().map(past -> past.hours()), Types.DOUBLE);
      set(insert, 8, row.past().map(past -> past.spreadHours()), Types.DOUBLE);
      set(insert, 9, row.past().map(past -> past.celsius()), Types.DOUBLE);
      set(insert, 10, row.because().map(because -> because.word()), Types.VARCHAR);
      set(insert, 11, row.excused().map(excused -> excused ? 1 : 0), Types.INTEGER);
      set(insert, 12, row.restores(), Types.DOUBLE);
      insert.executeUpdate();
    }
  }

  private static void set(PreparedStatement insert, int index, Optional<?> value, int type)
      throws SQLException {
    if (value.isPresent()) {
      insert.setObject(index, value.get());
    } else {
      insert.setNull(index, type);
    }
  }
}
