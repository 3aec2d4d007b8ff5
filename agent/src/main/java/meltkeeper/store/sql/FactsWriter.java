package meltkeeper.store.sql;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.util.HashMap;
import java.util.Map;
import meltkeeper.jam.WatchState;
import meltkeeper.ledger.Account;
import meltkeeper.ledger.Bucket;
import meltkeeper.ledger.Tally;
import meltkeeper.part.Exposure.Heat;
import meltkeeper.protocol.HotEnd;
import meltkeeper.store.Commit;

/** Carries out one commit within the transaction of the caller. */
final class FactsWriter {

  private static final String CUT =
      "UPDATE bucket SET until_nanos = ? WHERE hot_end = ? AND from_nanos = ? AND until_nanos > ?";

  private static final String ADD =
      """
      INSERT INTO bucket (hot_end, from_nanos, until_nanos, bridged_nanos, unobserved_nanos,
        idle_nanos, printing_nanos, commanded_micrometres, measured_micrometres)
      VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?)
      ON CONFLICT (hot_end, from_nanos) DO UPDATE SET
        bridged_nanos = bucket.bridged_nanos + excluded.bridged_nanos,
        unobserved_nanos = bucket.unobserved_nanos + excluded.unobserved_nanos,
        idle_nanos = bucket.idle_nanos + excluded.idle_nanos,
        printing_nanos = bucket.printing_nanos + excluded.printing_nanos,
        commanded_micrometres = bucket.commanded_micrometres + excluded.commanded_micrometres,
        measured_micrometres = bucket.measured_micrometres + excluded.measured_micrometres
      """;

  private static final String ADD_HEAT =
      """
      INSERT INTO heat (hot_end, from_nanos, band, nanos, micro_celsius_seconds)
      VALUES (?, ?, ?, ?, ?)
      ON CONFLICT (hot_end, from_nanos, band) DO UPDATE SET
        nanos = heat.nanos + excluded.nanos,
        micro_celsius_seconds = heat.micro_celsius_seconds + excluded.micro_celsius_seconds
      """;

  private static final String DROP_HEAT =
      """
      DELETE FROM heat
      WHERE hot_end = ? AND from_nanos = ? AND nanos = 0 AND micro_celsius_seconds = 0
      """;

  private static final String DROP =
      """
      DELETE FROM bucket
      WHERE hot_end = ? AND from_nanos = ? AND bridged_nanos = 0 AND unobserved_nanos = 0
        AND idle_nanos = 0 AND printing_nanos = 0 AND commanded_micrometres = 0
        AND measured_micrometres = 0
        AND NOT EXISTS (SELECT 1 FROM heat
          WHERE heat.hot_end = bucket.hot_end AND heat.from_nanos = bucket.from_nanos)
      """;

  private static final String KEEP_ACCOUNT =
      """
      INSERT INTO account (hot_end, state) VALUES (?, ?)
      ON CONFLICT (hot_end) DO UPDATE SET state = excluded.state
      """;

  private static final String KEEP_WATCH =
      """
      INSERT INTO watch (hot_end, state) VALUES (?, ?)
      ON CONFLICT (hot_end) DO UPDATE SET state = excluded.state
      """;

  private final Connection connection;
  private final Map<HotEnd, Long> ids = new HashMap<>();

  FactsWriter(Connection connection) {
    this.connection = connection;
  }

  void carryOut(Commit commit) throws SQLException {
    try (Batch cuts = new Batch(CUT);
        Batch buckets = new Batch(ADD);
        Batch heats = new Batch(ADD_HEAT);
        Batch dropHeats = new Batch(DROP_HEAT);
        Batch drops = new Batch(DROP);
        Batch accounts = new Batch(KEEP_ACCOUNT);
        Batch watches = new Batch(KEEP_WATCH)) {
      for (Commit.Cut cut : commit.cuts()) {
        cuts.add(cut.untilNanos(), id(cut.hotEnd()), cut.fromNanos(), cut.untilNanos());
      }
      for (Bucket credit : commit.credits()) {
        add(credit, buckets, heats);
        dropHeats.add(id(credit.hotEnd()), credit.fromNanos());
        drops.add(id(credit.hotEnd()), credit.fromNanos());
      }
      for (Account account : commit.accounts()) {
        accounts.add(id(account.hotEnd()), AccountJson.written(account));
      }
      for (WatchState watch : commit.watches()) {
        watches.add(id(watch.hotEnd()), WatchJson.written(watch));
      }
      for (Batch batch : new Batch[] {cuts, buckets, heats, dropHeats, drops, accounts, watches}) {
        batch.carryOut();
      }
    }
    new AlertWriter(connection).post(commit.postings());
  }

  private void add(Bucket credit, Batch buckets, Batch heats) throws SQLException {
    long hotEnd = id(credit.hotEnd());
    Tally tally = credit.tally();
    buckets.add(
        hotEnd,
        credit.fromNanos(),
        credit.untilNanos(),
        tally.bridgedNanos(),
        tally.unobservedNanos(),
        tally.idleNanos(),
        tally.printingNanos(),
        tally.commandedMicrometres(),
        tally.measuredMicrometres());
    for (Map.Entry<Integer, Heat> band : tally.exposure().bands().entrySet()) {
      Heat heat = band.getValue();
      heats.add(
          hotEnd, credit.fromNanos(), band.getKey(), heat.nanos(), heat.microCelsiusSeconds());
    }
  }

  private long id(HotEnd hotEnd) throws SQLException {
    Long known = ids.get(hotEnd);
    if (known == null) {
      known = HotEnds.findOrAdd(connection, hotEnd);
      ids.put(hotEnd, known);
    }
    return known;
  }

  /** One statement with many rows of arguments. */
  private final class Batch implements AutoCloseable {
    private final PreparedStatement statement;

    Batch(String sql) throws SQLException {
      statement = connection.prepareStatement(sql);
    }

    void add(Object... arguments) throws SQLException {
      for (int i = 0; i < arguments.length; i++) {
        statement.setObject(i + 1, arguments[i]);
      }
      statement.addBatch();
    }

    void carryOut() throws SQLException {
      statement.executeBatch();
    }

    @Override
    public void close() throws SQLException {
      statement.close();
    }
  }
}
