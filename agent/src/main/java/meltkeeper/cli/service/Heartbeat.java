package meltkeeper.cli.service;

import java.io.IOException;
import java.net.HttpURLConnection;
import java.net.URI;
import java.util.function.Supplier;
import javax.net.ssl.SSLException;

/**
 * Whether the agent goes on working: its writer has published a new snapshot since the last
 * question, and its page answers. A store in trouble, a broker that is away or a route that fails
 * is no reason to start anew: that would mend nothing. For one thread.
 */
public final class Heartbeat {

  private static final int PATIENCE_MILLIS = 10_000;

  private final Supplier<?> snapshot;
  private final URI page;
  private Object last = new Object();

  /**
   * @param snapshot what the writer published last; another object each time that it went round
   * @param page anything that the agent serves
   */
  public Heartbeat(Supplier<?> snapshot, URI page) {
    this.snapshot = snapshot;
    this.page = page;
  }

  /** True when both have given a sign of life since the last question. */
  boolean beats() {
    Object now = snapshot.get();
    boolean wentRound = now != last;
    last = now;
    return wentRound && answers();
  }

  private boolean answers() {
    try {
      HttpURLConnection connection = (HttpURLConnection) page.toURL().openConnection();
      connection.setConnectTimeout(PATIENCE_MILLIS);
      connection.setReadTimeout(PATIENCE_MILLIS);
      try {
        return connection.getResponseCode() > 0;
      } finally {
        connection.disconnect();
      }
    } catch (SSLException e) {
      // It answered with a certificate that this computer does not trust; that is the visitors'
      // affair.
      return true;
    } catch (IOException e) {
      return false;
    }
  }
}
