package meltkeeper.testing;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/**
 * A printer on a TCP port of the loopback interface, one connection at a time, that answers each
 * line by a script, and says whatever else the test wants.
 */
public final class ScriptedPrinter implements AutoCloseable {

  /** Answers as common printers do (common practice, no source); reports only when asked. */
  public static final Function<String, List<String>> POLLED =
      line ->
          switch (line) {
            case "M105" -> List.of("ok T:214.9 /215.0 B:60.0 /60.0 @:54 B@:20");
            case "M27" -> List.of("SD printing byte 10/100", "ok");
            case "M114" -> List.of("X:1.00 Y:2.00 Z:0.30 E:4.50 Count X:80 Y:160 Z:120", "ok");
            default -> List.of("echo:Unknown command: \"" + line + "\"", "ok");
          };

  /** As {@link #POLLED}, but takes the wish for reports. */
  public static final Function<String, List<String>> REPORTING =
      line -> line.startsWith("M155") ? List.of("ok") : POLLED.apply(line);

  private final ServerSocket server;
  private final List<String> heard = new CopyOnWriteArrayList<>();
  private final Thread thread;
  private volatile Function<String, List<String>> script;
  private volatile boolean admitting = true;
  private volatile @Nullable Socket connection;
  private final AtomicInteger connections = new AtomicInteger();

  /** On a free port. */
  public ScriptedPrinter(Function<String, List<String>> script) throws IOException {
    this(0, script);
  }

  /** On a port of the test's choice. */
  public ScriptedPrinter(int port, Function<String, List<String>> script) throws IOException {
    this.script = script;
    this.server = new ServerSocket(port, 1, InetAddress.getLoopbackAddress());
    this.thread = new Thread(this::serve, "scripted printer");
    thread.start();
  }

  public int port() {
    return server.getLocalPort();
  }

  /** From now on it answers so. */
  public void follow(Function<String, List<String>> other) {
    script = other;
  }

  /** Every line that it was sent. */
  public List<String> heard() {
    return List.copyOf(heard);
  }

  /** How many connections were made to it. */
  public int connections() {
    return connections.get();
  }

  /** From now on it takes, or hangs up on, whoever connects. */
  public void admit(boolean admitting) {
    this.admitting = admitting;
  }

  /** Sends text as it is, line ends included by the caller. */
  public void say(String text) throws IOException {
    Socket present = connection;
    if (present == null) {
      throw new IOException("nobody is connected to the scripted printer");
    }
    present.getOutputStream().write(text.getBytes(StandardCharsets.ISO_8859_1));
  }

  /** Ends the present connection. */
  public void hangUp() throws IOException {
    Socket present = connection;
    if (present != null) {
      present.close();
    }
  }

  private void serve() {
    while (!server.isClosed()) {
      try (Socket socket = server.accept()) {
        if (admitting) {
          connection = socket;
          connections.incrementAndGet();
          converse(socket);
        }
      } catch (IOException e) {
        // The connection, or the whole printer, was ended.
        connection = null;
      }
    }
  }

  private void converse(Socket socket) throws IOException {
    BufferedReader in =
        new BufferedReader(
            new InputStreamReader(socket.getInputStream(), StandardCharsets.ISO_8859_1));
    String line = in.readLine();
    while (line != null) {
      heard.add(line);
      for (String answer : script.apply(line)) {
        say(answer + "\n");
      }
      line = in.readLine();
    }
  }

  @Override
  public void close() throws IOException {
    server.close();
    hangUp();
    try {
      thread.join();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }
}
