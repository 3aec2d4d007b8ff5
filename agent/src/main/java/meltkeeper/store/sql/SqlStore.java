package meltkeeper.store.sql;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.InstantSource;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalLong;
import meltkeeper.jam.WatchState;
import meltkeeper.ledger.Account;
import meltkeeper.ledger.Bucket;
import meltkeeper.ledger.Tally;
import meltkeeper.part.Part;
import meltkeeper.protocol.HotEnd;
import meltkeeper.store.Commit;
import meltkeeper.store.Outbox;
import meltkeeper.store.Store;
import meltkeeper.store.StoreException;

/** A store in an SQL database. */
final class SqlStore implements Store {

  private static final String ACCOUNTS =
      """
      SELECT h.printer, h.number, a.state
      FROM account AS a JOIN hot_end AS h ON h.id = a.hot_end
      """;

  private static final String WATCHES =
      """
      SELECT h.printer, h.number, w.state
      FROM watch AS w JOIN hot_end AS h ON h.id = w.hot_end
      ORDER BY h.printer, h.number
      """;

  private static final String REVISION = "SELECT coalesce(max(number), 0) FROM revision";

  private final SqliteFile file;
  private final InstantSource clock;

  /** Takes over an open file. */
  SqlStore(SqliteFile file, InstantSource clock) {
    this.file = file;
    this.clock = clock;
  }

  @Override
  public void claim() {
    file.claim().take();
  }

  @Override
  public void commit(Commit commit) {
    claim();
    file.writing().change("commit", connection -> new FactsWriter(connection).carryOut(commit));
  }

  @Override
  public List<Account> accounts() {
    return file.reading().run("read the accounts", SqlStore::accounts);
  }

  private static List<Account> accounts(Connection connection) throws SQLException {
    try (PreparedStatement query = connection.prepareStatement(ACCOUNTS);
        ResultSet row = query.executeQuery()) {
      List<Account> accounts = new ArrayList<>();
      while (row.next()) {
        HotEnd hotEnd = new HotEnd(row.getString(1), row.getInt(2));
        accounts.add(AccountJson.read(hotEnd, row.getString(3)));
      }
      accounts.sort(Comparator.comparing(Account::hotEnd));
      return List.copyOf(accounts);
    }
  }

  @Override
  public List<WatchState> watches() {
    return file.reading().run("read the jam watches", SqlStore::watches);
  }

  private static List<WatchState> watches(Connection connection) throws SQLException {
    try (PreparedStatement query = connection.prepareStatement(WATCHES);
        ResultSet row = query.executeQuery()) {
      List<WatchState> watches = new ArrayList<>();
      while (row.next()) {
        HotEnd hotEnd = new HotEnd(row.getString(1), row.getInt(2));
        watches.add(WatchJson.read(hotEnd, row.getString(3)));
      }
      return List.copyOf(watches);
    }
  }

  @Override
  public List<Bucket> buckets(HotEnd hotEnd, long fromNanos, long untilNanos) {
    return ofFacts(
        hotEnd, fromNanos, untilNanos, List.of(), facts -> facts.buckets(fromNanos, untilNanos));
  }

  @Override
  public Tally tally(HotEnd hotEnd, long fromNanos, long untilNanos) {
    return ofFacts(
        hotEnd, fromNanos, untilNanos, Tally.NONE, facts -> facts.tally(fromNanos, untilNanos));
  }

  /** A question to the facts of one hot end. */
  @FunctionalInterface
  private interface Question<T> {
    T to(FactsReader facts) throws SQLException;
  }

  private <T> T ofFacts(
      HotEnd hotEnd, long fromNanos, long untilNanos, T nothing, Question<T> question) {
    if (fromNanos >= untilNanos) {
      return nothing;
    }
    return file.reading()
        .run(
            "read the facts of " + hotEnd,
            connection -> {
              OptionalLong id = HotEnds.find(connection, hotEnd);
              return id.isEmpty()
                  ? nothing
                  : question.to(new FactsReader(connection, hotEnd, id.getAsLong()));
            });
  }

  @Override
  public long revision() {
    file.lookAfter();
    return file.glancing().run("read the revision of the parts", SqlStore::revision);
  }

  private static long revision(Connection connection) throws SQLException {
    try (PreparedStatement query = connection.prepareStatement(REVISION);
        ResultSet row = query.executeQuery()) {
      row.next();
      return row.getLong(1);
    }
  }

  @Override
  public List<Part> parts() {
    return file.reading().run("read the parts", connection -> new PartReader(connection).parts());
  }

  @Override
  public boolean saveParts(long expectedRevision, List<Part> parts) {
    return file.writing()
        .run(
            "save the parts",
            connection -> {
              if (revision(connection) != expectedRevision) {
                return false;
              }
              save(connection, expectedRevision + 1, parts);
              return true;
            });
  }

  private void save(Connection connection, long revision, List<Part> parts) throws SQLException {
    try (PreparedStatement insert =
        connection.prepareStatement(
            "INSERT INTO revision (number, recorded_nanos) VALUES (?, ?)")) {
      insert.setLong(1, revision);
      insert.setLong(2, now());
      insert.executeUpdate();
    }
    PartRows rows = new PartRows(connection, revision);
    for (Part part : parts) {
      rows.add(part);
    }
  }

  private long now() {
    Instant now = clock.instant();
    return Math.addExact(Math.multiplyExact(now.getEpochSecond(), 1_000_000_000L), now.getNano());
  }

  @Override
  public boolean hasRecording(String digest) {
    return file.reading()
        .run("look for a recording", connection -> hasRecording(connection, digest));
  }

  private static boolean hasRecording(Connection connection, String digest) throws SQLException {
    try (PreparedStatement query =
        connection.prepareStatement("SELECT 1 FROM recording WHERE digest = ?")) {
      query.setString(1, digest);
      try (ResultSet row = query.executeQuery()) {
        return row.next();
      }
    }
  }

  @Override
  public void keepRecording(String digest, String name, long atNanos, Commit last) {
    claim();
    file.writing()
        .change(
            "keep the recording " + name,
            connection -> {
              if (hasRecording(connection, digest)) {
                throw StoreException.recordingKnown(name);
              }
              new FactsWriter(connection).carryOut(last);
              insertRecording(connection, digest, name, atNanos);
            });
  }

  private static void insertRecording(
      Connection connection, String digest, String name, long atNanos) throws SQLException {
    try (PreparedStatement insert =
        connection.prepareStatement(
            "INSERT INTO recording (digest, name, at_nanos) VALUES (?, ?, ?)")) {
      insert.setString(1, digest);
      insert.setString(2, name);
      insert.setLong(3, atNanos);
      insert.executeUpdate();
    }
  }

  @Override
  public Outbox outbox() {
    return new SqlOutbox(file);
  }

  @Override
  public void close() {
    file.close();
  }
}
