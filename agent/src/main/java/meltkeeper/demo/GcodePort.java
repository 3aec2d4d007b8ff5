package meltkeeper.demo;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;

/**
 * A printer's TCP port on a free port of the loopback address; one connection at a time, as a
 * serial bridge has it. Safe for use by several threads.
 */
public final class GcodePort implements AutoCloseable {

  private final ServerSocket server;
  private final Supplier<PrinterState> printer;
  private final Thread thread;
  private final Object lock = new Object();
  private Optional<Connection> connection = Optional.empty();

  private record Connection(Socket socket, GcodeVoice voice) {}

  /**
   * Opens the port.
   *
   * @param printer tells the printer's present state, to any thread
   * @throws UncheckedIOException when no port is free
   */
  public GcodePort(String name, Supplier<PrinterState> printer) {
    this.printer = printer;
    try {
      this.server = new ServerSocket(0, 1, InetAddress.getLoopbackAddress());
    } catch (IOException e) {
      throw new UncheckedIOException("no port is free on the loopback address", e);
    }
    this.thread = new Thread(this::serve, "printer-" + name);
    this.thread.setDaemon(true);
    this.thread.start();
  }

  public int port() {
    return server.getLocalPort();
  }

  /** Sends the report that is due unasked, if somebody is connected. */
  public void tick() {
    synchronized (lock) {
      connection.ifPresent(open -> send(open, open.voice().unasked(printer.get())));
    }
  }

  /** Hangs up and waits until the port is free. May be called again. */
  @Override
  public void close() {
    try {
      server.close();
      synchronized (lock) {
        if (connection.isPresent()) {
          connection.get().socket().close();
        }
      }
      thread.join();
    } catch (IOException e) {
      throw new UncheckedIOException("the printer's port did not close", e);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  private void serve() {
    while (!server.isClosed()) {
      try (Socket socket = server.accept()) {
        talk(socket);
      } catch (IOException hungUp) {
        // Whoever was connected may come back; the port itself closing ends the loop.
      }
    }
  }

  private void talk(Socket socket) throws IOException {
    Connection open = new Connection(socket, new GcodeVoice());
    synchronized (lock) {
      if (server.isClosed()) {
        return;
      }
      connection = Optional.of(open);
    }
    try {
      BufferedReader lines =
          new BufferedReader(
              new InputStreamReader(socket.getInputStream(), StandardCharsets.US_ASCII));
      for (String line = lines.readLine(); line != null; line = lines.readLine()) {
        synchronized (lock) {
          send(open, open.voice().answers(line, printer.get()));
        }
      }
    } finally {
      synchronized (lock) {
        connection = Optional.empty();
      }
    }
  }

  private static void send(Connection open, List<String> lines) {
    if (lines.isEmpty()) {
      return;
    }
    try {
      String text = String.join("\n", lines) + "\n";
      open.socket().getOutputStream().write(text.getBytes(StandardCharsets.US_ASCII));
    } catch (IOException gone) {
      // The reading side of the same socket notices and makes room for the next.
    }
  }
}
