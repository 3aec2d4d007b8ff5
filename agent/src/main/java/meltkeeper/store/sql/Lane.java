package meltkeeper.store.sql;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;

/** One connection that carries one transaction at a time. Safe for use by several threads. */
final class Lane implements AutoCloseable {

  private final Path file;
  private final Connection connection;

  /** Takes over a connection that does not commit by itself. */
  Lane(Path file, Connection connection) {
    this.file = file;
    this.connection = connection;
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
      T result = work.on(connection);
      connection.commit();
      return result;
    } catch (SQLException e) {
      rollback(e);
      throw Trouble.of(file, task, e);
    } catch (RuntimeException | Error e) {
      rollback(e);
      throw e;
    }
  }

  private void rollback(Throwable cause) {
    try {
      connection.rollback();
    } catch (SQLException e) {
      cause.addSuppressed(e);
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
