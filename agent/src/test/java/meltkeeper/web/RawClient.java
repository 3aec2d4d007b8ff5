package meltkeeper.web;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.net.InetAddress;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import javax.net.SocketFactory;

/** A client that sends what no well-behaved one would, byte by byte. */
final class RawClient implements AutoCloseable {

  private final Socket socket;

  RawClient(int port) throws IOException {
    this(port, SocketFactory.getDefault());
  }

  RawClient(int port, SocketFactory sockets) throws IOException {
    this.socket = sockets.createSocket(InetAddress.getLoopbackAddress(), port);
    socket.setSoTimeout((int) Duration.ofSeconds(60).toMillis());
  }

  /** Sends lines, each ended as HTTP wants it. */
  RawClient send(String... lines) throws IOException {
    socket
        .getOutputStream()
        .write((String.join("\r\n", lines) + "\r\n").getBytes(StandardCharsets.ISO_8859_1));
    return this;
  }

  /** Sends the same bytes over and over. */
  void pour(byte[] bytes, int times) throws IOException {
    for (int i = 0; i < times; i++) {
      socket.getOutputStream().write(bytes);
    }
  }

  /** All that comes until the server hangs up. */
  String rest() throws IOException {
    ByteArrayOutputStream all = new ByteArrayOutputStream();
    InputStream in = socket.getInputStream();
    try {
      in.transferTo(all);
    } catch (java.net.SocketException e) {
      return all.toString(StandardCharsets.UTF_8);
    }
    return all.toString(StandardCharsets.UTF_8);
  }

  /** Sends a request of one line and its Host, and hears the answer. */
  static String ask(int port, String line, String host) throws IOException {
    try (RawClient client = new RawClient(port)) {
      return client.send(line, "Host: " + host, "Connection: close", "").rest();
    }
  }

  @Override
  public void close() throws IOException {
    socket.close();
  }
}
