package meltkeeper.source.tcp;

import java.io.EOFException;
import java.io.IOException;
import java.net.InetSocketAddress;
import java.net.Socket;
import java.net.SocketTimeoutException;
import java.nio.channels.SocketChannel;
import java.time.Duration;
import meltkeeper.source.Wire;
import meltkeeper.source.WireOpener;

/** Opens a connection to one TCP port; the name is looked up each time. */
record TcpOpener(String host, int port) implements WireOpener {

  private static final int CONNECT_MILLIS = 5_000;

  @Override
  public Wire open() throws IOException {
    InetSocketAddress address = new InetSocketAddress(host, port);
    if (address.isUnresolved()) {
      throw new IOException("the name " + host + " is not known");
    }
    // The socket of a channel, unlike any other, ends its waiting when the thread is interrupted.
    Socket socket = SocketChannel.open().socket();
    try {
      socket.connect(address, CONNECT_MILLIS);
      socket.setTcpNoDelay(true);
      socket.setKeepAlive(true);
      return new TcpWire(socket, place());
    } catch (IOException e) {
      socket.close();
      throw new IOException(place() + " cannot be reached: " + e.getMessage(), e);
    }
  }

  @Override
  public String place() {
    return host + ":" + port;
  }

  /** An open connection. */
  private record TcpWire(Socket socket, String place) implements Wire {

    @Override
    public int read(byte[] into, Duration atMost) throws IOException {
      // A time-out of zero would wait for ever.
      socket.setSoTimeout((int) Math.max(1, atMost.toMillis()));
      try {
        int count = socket.getInputStream().read(into);
        if (count < 0) {
          throw new EOFException(place + " hung up");
        }
        return count;
      } catch (SocketTimeoutException e) {
        return 0;
      }
    }

    @Override
    public void write(byte[] bytes) throws IOException {
      socket.getOutputStream().write(bytes);
    }

    @Override
    public void close() throws IOException {
      socket.close();
    }
  }
}
