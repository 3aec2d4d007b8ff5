package meltkeeper.source.mqtt;

import java.io.BufferedInputStream;
import java.io.FilterInputStream;
import java.io.FilterOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.InterruptedIOException;
import java.io.OutputStream;
import java.net.InetSocketAddress;
import java.net.Socket;
import java.net.SocketAddress;
import java.net.SocketTimeoutException;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;

/**
 * The socket under the client library, with or without TLS, which mends six of its habits.
 *
 * <ul>
 *   <li>The library reads a few bytes a call: here they come out of a buffer.
 *   <li>It loses its place in the stream when a read times out in the middle of a packet's first
 *       bytes, and asks for a time-out of one second: here reads do not time out. A silent broker
 *       is found by the keep-alive, and a closed socket ends every read.
 *   <li>Its thread that connects waits for ever when the peer hangs up before the reading thread
 *       was seen running: here nothing is read until the first byte was written. An MQTT server
 *       never speaks first (MQTT 5.0, 3.1).
 *   <li>It makes room for whatever length a packet claims: here packets are bounded.
 *   <li>Its thread that writes can miss the one call that ends it, between looking whether to go on
 *       and waiting for work, and then waits for ever: here it is known, and can be woken.
 *   <li>It shuts the input down before it closes, which a TLS socket may answer with an exception,
 *       leaving it open: here closing is all that closes.
 * </ul>
 */
final class BrokerSocket extends Socket {

  private static final int BUFFER_BYTES = 16 * 1024;

  private final Socket raw = new Socket();
  private final Optional<Tls> tls;
  private final CountDownLatch spoken = new CountDownLatch(1);
  private volatile Socket top = raw;
  private volatile Optional<Thread> writer = Optional.empty();

  BrokerSocket(Optional<Tls> tls) {
    this.tls = tls;
  }

  @Override
  public void connect(SocketAddress endpoint, int timeoutMillis) throws IOException {
    raw.connect(endpoint, timeoutMillis);
    raw.setTcpNoDelay(true);
    raw.setKeepAlive(true);
    if (tls.isPresent()) {
      raw.setSoTimeout(timeoutMillis);
      top = tls.get().over(raw, ((InetSocketAddress) endpoint).getPort());
      raw.setSoTimeout(0);
    }
  }

  @Override
  public synchronized void setSoTimeout(int timeoutMillis) {
    // See above: a read that times out loses its place.
  }

  @Override
  public InputStream getInputStream() throws IOException {
    return new Listening(
        new BoundedPackets(new BufferedInputStream(top.getInputStream(), BUFFER_BYTES)));
  }

  @Override
  public OutputStream getOutputStream() throws IOException {
    return new Speaking(top.getOutputStream());
  }

  @Override
  public void shutdownInput() {
    // Closing follows at once.
  }

  @Override
  public synchronized void close() {
    try {
      raw.close();
    } catch (IOException e) {
      // There is nothing left to close then.
    }
  }

  /**
   * True when the thread that writes has ended; wakes it if it has not. To be asked once the
   * library is closed, as it waits again while it is not.
   */
  boolean isAtRest() {
    writer.filter(Thread::isAlive).ifPresent(Thread::interrupt);
    return !writer.filter(Thread::isAlive).isPresent();
  }

  private final class Speaking extends FilterOutputStream {

    Speaking(OutputStream out) {
      super(out);
    }

    @Override
    public void write(byte[] bytes, int from, int length) throws IOException {
      begin();
      out.write(bytes, from, length);
    }

    @Override
    public void write(int b) throws IOException {
      begin();
      out.write(b);
    }

    private void begin() {
      writer = Optional.of(Thread.currentThread());
      spoken.countDown();
    }
  }

  private final class Listening extends FilterInputStream {

    Listening(InputStream in) {
      super(in);
    }

    @Override
    public int read() throws IOException {
      awaitFirstWord();
      return in.read();
    }

    @Override
    public int read(byte[] bytes, int from, int length) throws IOException {
      awaitFirstWord();
      return in.read(bytes, from, length);
    }

    private void awaitFirstWord() throws IOException {
      try {
        if (!spoken.await(1, TimeUnit.SECONDS)) {
          throw new SocketTimeoutException("nothing was said to the broker yet");
        }
      } catch (InterruptedException e) {
        Thread.currentThread().interrupt();
        throw new InterruptedIOException("interrupted before anything was said to the broker");
      }
    }
  }
}
