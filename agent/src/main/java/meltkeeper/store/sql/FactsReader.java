package meltkeeper.store.sql;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.NavigableMap;
import java.util.TreeMap;
import meltkeeper.ledger.Bucket;
import meltkeeper.ledger.Tally;
import meltkeeper.part.Exposure;
import meltkeeper.part.Exposure.Heat;
import meltkeeper.protocol.HotEnd;

/**
 * Reads facts within the transaction of the caller. No bucket is longer than {@link
 * Bucket#LENGTH_NANOS}: those that overlap a stretch begin less than that before it, and those that
 * begin earlier than that before its end lie whole within it.
 */
final class FactsReader {

  private static final String BUCKETS =
      """
      SELECT b.from_nanos, b.until_nanos, b.bridged_nanos, b.unobserved_nanos, b.idle_nanos,
        b.printing_nanos, b.commanded_micrometres, b.measured_micrometres,
        h.band, h.nanos, h.micro_celsius_seconds
      FROM bucket AS b
      LEFT JOIN heat AS h ON h.hot_end = b.hot_end AND h.from_nanos = b.from_nanos
      WHERE b.hot_end = ? AND b.from_nanos BETWEEN ? AND ? AND b.until_nanos > ?
      ORDER BY b.from_nanos, h.band
      """;

  private static final String SUM =
      """
      SELECT coalesce(sum(bridged_nanos), 0), coalesce(sum(unobserved_nanos), 0),
        coalesce(sum(idle_nanos), 0), coalesce(sum(printing_nanos), 0),
        coalesce(sum(commanded_micrometres), 0), coalesce(sum(measured_micrometres), 0)
      FROM bucket WHERE hot_end = ? AND from_nanos BETWEEN ? AND ?
      """;

  private static final String SUM_OF_HEAT =
      """
      SELECT band, sum(nanos), sum(micro_celsius_seconds)
      FROM heat WHERE hot_end = ? AND from_nanos BETWEEN ? AND ? GROUP BY band
      """;

  private final Connection connection;
  private final HotEnd hotEnd;
  private final long id;

  FactsReader(Connection connection, HotEnd hotEnd, long id) {
    this.connection = connection;
    this.hotEnd = hotEnd;
    this.id = id;
  }

  /** The buckets that overlap a stretch of time, which is not empty. */
  List<Bucket> buckets(long fromNanos, long untilNanos) throws SQLException {
    return overlapping(earlier(fromNanos, Bucket.LENGTH_NANOS - 1), untilNanos - 1, fromNanos);
  }

  /** The facts of a stretch of time, which is not empty. */
  Tally tally(long fromNanos, long untilNanos) throws SQLException {
    long lastWhole = earlier(untilNanos, Bucket.LENGTH_NANOS);
    List<Bucket> edges = new ArrayList<>();
    if (fromNanos > Long.MIN_VALUE) {
      edges.addAll(
          overlapping(earlier(fromNanos, Bucket.LENGTH_NANOS - 1), fromNanos - 1, fromNanos));
    }
    edges.addAll(overlapping(Math.max(fromNanos, lastWhole + 1), untilNanos - 1, Long.MIN_VALUE));
    Tally sum = lastWhole < fromNanos ? Tally.NONE : sumOfBeginning(fromNanos, lastWhole);
    for (Bucket edge : edges) {
      sum = sum.plus(edge.within(fromNanos, untilNanos));
    }
    return sum;
  }

  private static long earlier(long nanos, long by) {
    return nanos < Long.MIN_VALUE + by ? Long.MIN_VALUE : nanos - by;
  }

  private List<Bucket> overlapping(long first, long last, long endingAfter) throws SQLException {
    try (PreparedStatement query = connection.prepareStatement(BUCKETS)) {
      query.setLong(1, id);
      query.setLong(2, first);
      query.setLong(3, last);
      query.setLong(4, endingAfter);
      try (ResultSet row = query.executeQuery()) {
        List<Bucket> buckets = new ArrayList<>();
        boolean more = row.next();
        while (more) {
          long from = row.getLong(1);
          long until = row.getLong(2);
          Tally cold = measures(row, 3, Exposure.NONE);
          NavigableMap<Integer, Heat> bands = new TreeMap<>();
          do {
            int band = row.getInt(9);
            if (!row.wasNull()) {
              bands.put(band, new Heat(row.getLong(10), row.getLong(11)));
            }
            more = row.next();
          } while (more && row.getLong(1) == from);
          buckets.add(new Bucket(hotEnd, from, until, withHeat(cold, bands)));
        }
        return buckets;
      }
    }
  }

  private Tally sumOfBeginning(long first, long last) throws SQLException {
    try (PreparedStatement measures = connection.prepareStatement(SUM);
        PreparedStatement heat = connection.prepareStatement(SUM_OF_HEAT)) {
      for (PreparedStatement query : List.of(measures, heat)) {
        query.setLong(1, id);
        query.setLong(2, first);
        query.setLong(3, last);
      }
      NavigableMap<Integer, Heat> bands = new TreeMap<>();
      try (ResultSet row = heat.executeQuery()) {
        while (row.next()) {
          bands.put(row.getInt(1), new Heat(row.getLong(2), row.getLong(3)));
        }
      }
      try (ResultSet row = measures.executeQuery()) {
        row.next();
        return measures(row, 1, new Exposure(bands));
      }
    }
  }

  private static Tally measures(ResultSet row, int first, Exposure exposure) throws SQLException {
    return new Tally(
        exposure,
        row.getLong(first),
        row.getLong(first + 1),
        row.getLong(first + 2),
        row.getLong(first + 3),
        row.getLong(first + 4),
        row.getLong(first + 5));
  }

  private static Tally withHeat(Tally cold, NavigableMap<Integer, Heat> bands) {
    return cold.plus(new Tally(new Exposure(bands), 0, 0, 0, 0, 0, 0));
  }
}
