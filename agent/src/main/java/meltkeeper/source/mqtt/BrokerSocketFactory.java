package meltkeeper.source.mqtt;

import java.net.InetAddress;
import java.net.Socket;
import java.util.Optional;
import javax.net.SocketFactory;
import org.jspecify.annotations.Nullable;

/**
 * Makes the one socket of a connection, and can close it whatever the client library is doing: a
 * library that hangs in a connect or a read is freed by that, and in no other way.
 */
final class BrokerSocketFactory extends SocketFactory {

  private final Optional<Tls> tls;
  private @Nullable BrokerSocket socket;
  private boolean closed;

  BrokerSocketFactory(Optional<Tls> tls) {
    this.tls = tls;
  }

  @Override
  public synchronized Socket createSocket() {
    BrokerSocket made = new BrokerSocket(tls);
    if (closed) {
      made.close();
    }
    socket = made;
    return made;
  }

  /** Closes the socket, the present one or the one still to be made. */
  synchronized void close() {
    closed = true;
    if (socket != null) {
      socket.close();
    }
  }

  /** See {@link BrokerSocket#isAtRest()}. */
  synchronized boolean isAtRest() {
    return socket == null || socket.isAtRest();
  }

  @Override
  public Socket createSocket(String host, int port) {
    throw new UnsupportedOperationException("only unconnected sockets are made here");
  }

  @Override
  public Socket createSocket(String host, int port, InetAddress local, int localPort) {
    return createSocket(host, port);
  }

  @Override
  public Socket createSocket(InetAddress host, int port) {
    return createSocket(host.getHostAddress(), port);
  }

  @Override
  public Socket createSocket(InetAddress host, int port, InetAddress local, int localPort) {
    return createSocket(host.getHostAddress(), port);
  }
}
