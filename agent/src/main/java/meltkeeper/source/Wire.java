package meltkeeper.source;

import java.io.Closeable;
import java.io.IOException;
import java.time.Duration;

/** An open connection to a printer, used by one thread. */
public interface Wire extends Closeable {

  /**
   * Reads what has come, waiting for it up to the time given.
   *
   * @return the number of bytes read, 0 when none came
   * @throws IOException when the connection is gone, be it ended by the other side
   */
  int read(byte[] into, Duration atMost) throws IOException;

  /** Writes all of the bytes. */
  void write(byte[] bytes) throws IOException;
}
