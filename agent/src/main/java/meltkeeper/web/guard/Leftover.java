package meltkeeper.web.guard;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.time.Duration;
import java.util.concurrent.Executor;
import java.util.function.LongSupplier;
import org.eclipse.jetty.io.AbstractConnection;
import org.eclipse.jetty.io.Connection;
import org.eclipse.jetty.io.EndPoint;
import org.eclipse.jetty.util.BufferUtil;

/**
 * What a client still sends after it was answered: read and thrown away. Closing at once would make
 * the kernel reset the connection, and a reset takes with it the answer that the client has not
 * read yet. So the way out is closed, the way in is read to its end or to a bound, and only then
 * all is closed (RFC 9112, section 9.6). It holds no thread while it waits.
 */
final class Leftover extends AbstractConnection.NonBlocking implements Connection.UpgradeTo {

  /** A client that goes on for longer is cut off. */
  static final Duration MOST_TIME = Duration.ofSeconds(30);

  /** A client that sends nothing for so long is cut off. */
  static final Duration MOST_SILENCE = Duration.ofSeconds(5);

  /** A client that sends more is cut off. */
  static final long MOST_BYTES = 256L << 20;

  private static final int BUFFER_BYTES = 16 * 1024;

  private final LongSupplier nowNanos;
  private final long beganNanos;
  private final ByteBuffer buffer = BufferUtil.allocate(BUFFER_BYTES);
  private long readBytes;

  /**
   * What is left of a connection.
   *
   * @param nowNanos a clock that never goes back, from any origin
   */
  Leftover(EndPoint client, Executor executor, LongSupplier nowNanos) {
    super(client, executor);
    this.nowNanos = nowNanos;
    this.beganNanos = nowNanos.getAsLong();
  }

  @Override
  public void onOpen() {
    super.onOpen();
    getEndPoint().setIdleTimeout(MOST_SILENCE.toMillis());
    getEndPoint().shutdownOutput();
    fillInterested();
  }

  @Override
  public void onUpgradeTo(ByteBuffer readAlready) {
    BufferUtil.clear(readAlready);
  }

  /** Reads once, as it may run on the thread that watches all connections. */
  @Override
  public void onFillable() {
    try {
      BufferUtil.clear(buffer);
      int more = getEndPoint().fill(buffer);
      readBytes += Math.max(0, more);
      if (more < 0 || isEnough()) {
        close();
      } else {
        fillInterested();
      }
    } catch (IOException e) {
      getEndPoint().close(e);
    }
  }

  private boolean isEnough() {
    return readBytes > MOST_BYTES || nowNanos.getAsLong() - beganNanos > MOST_TIME.toNanos();
  }
}
