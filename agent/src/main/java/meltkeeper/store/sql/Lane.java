package meltkeeper.store.sql;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.sql.Statement;
import meltkeeper.store.StoreException;

/** One connection that carries one transaction at a time. Safe for use by several threads. */
final class Lane implements AutoCloseable {

  private final Path file;
  private final Connection connection;
  private final String begin;

  /**
   * Takes over a connection.
   *
   * @param begin the statement that begins a transaction. It is sent as it stands: the driver's own
   *     transactions begin the next one at once, which would hold the file's write lock for ever
   */
  Lane(Path file, Connection connection, String begin) {
    this.file = file;
    this.connection = connection;
    this.begin = begin;
  }

  /** Something to be done within a transaction. */
  @FunctionalInterface
  interface Work<T> {
    T on(Connection connection) throws SQLException;
  }

  /** Something to be done within a transaction that yields nothing. */
  @FunctionalInterface
  interface Change {
    void on(Connection connection) throws SQLException;
  }

  void change(String task, Change change) {
    run(
        task,
        connection -> {
          change.on(connection);
          return true;
        });
  }

  /**
   * Does it, all of it or nothing.
   *
   * @param task in words that follow "could not"
   */
  synchronized <T> T run(String task, Work<T> work) {
    try {
      send(begin);
      T result = work.on(connection);
      send("COMMIT");
      return result;
    } catch (SQLException e) {
      rollback(e);
      throw Trouble.of(file, task, e);
    } catch (RuntimeException | Error e) {
      rollback(e);
      throw e;
    }
  }

  /**
   * Writes all that this connection sees into a new file, even when its own is deleted by name.
   *
   * @throws StoreException when it cannot
   */
  synchronized void copyInto(Path copy) {
    try (PreparedStatement vacuum = connection.prepareStatement("VACUUM INTO ?")) {
      vacuum.setString(1, copy.toString());
      vacuum.execute();
    } catch (SQLException e) {
      throw Trouble.of(file, "write it anew after it was deleted while in use", e);
    }
  }

  private void rollback(Throwable cause) {
    try {
      send("ROLLBACK");
    } catch (SQLException e) {
      cause.addSuppressed(e);
    }
  }

  private void send(String command) throws SQLException {
    try (Statement statement = connection.createStatement()) {
      statement.execute(command);
    }
  }

  @Override
  public synchronized void close() {
    try {
      connection.close();
    } catch (SQLException e) {
      throw Trouble.of(file, "close it", e);
    }
  }
}
