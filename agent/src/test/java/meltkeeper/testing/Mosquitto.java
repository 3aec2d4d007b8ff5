package meltkeeper.testing;

import static org.awaitility.Awaitility.await;

import java.io.IOException;
import java.net.InetAddress;
import java.net.Socket;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A real broker on a port of the loopback interface. What it must keep survives a stop and a start.
 */
public final class Mosquitto implements AutoCloseable {

  private final Path program = RealParts.find("mosquitto");
  private final Path folder;
  private final int port;
  private final List<String> settings;
  private @Nullable RunningProgram running;

  private Mosquitto(Path folder, int port, List<String> settings) {
    this.folder = folder;
    this.port = port;
    this.settings = settings;
  }

  /**
   * Prepares a broker, and does not start it.
   *
   * @param folder for its files, empty
   * @param more lines for its configuration
   */
  public static Mosquitto in(Path folder, String... more) throws IOException {
    return new Mosquitto(folder, RealParts.freePort(), List.of(more));
  }

  public URI url() {
    return URI.create("tcp://127.0.0.1:" + port);
  }

  public int port() {
    return port;
  }

  /** Starts it and waits until it listens. */
  public Mosquitto start() throws IOException {
    Path configuration = folder.resolve("mosquitto.conf");
    List<String> lines =
        new ArrayList<>(
            List.of(
                "listener " + port + " 127.0.0.1",
                "user " + System.getProperty("user.name"),
                "persistence true",
                "persistence_location " + folder + "/",
                "max_queued_messages 100000"));
    lines.addAll(settings);
    if (settings.stream().noneMatch(line -> line.startsWith("allow_anonymous"))) {
      lines.add("allow_anonymous true");
    }
    Files.write(configuration, lines);
    running =
        RunningProgram.start(
            folder.resolve("mosquitto.log"),
            List.of(program.toString(), "-c", configuration.toString()));
    await("mosquitto listens").atMost(Duration.ofSeconds(20)).until(this::listens);
    return this;
  }

  /** Ends it in good order; it writes down what it must keep. */
  public void stop() throws InterruptedException {
    program().terminate();
  }

  /** Stops it from answering, while its sockets stay open. */
  public void freeze() throws IOException, InterruptedException {
    program().freeze();
  }

  /** Lets it answer again. */
  public void thaw() throws IOException, InterruptedException {
    program().thaw();
  }

  @Override
  public void close() {
    if (running != null) {
      running.close();
    }
  }

  private RunningProgram program() {
    if (running == null) {
      throw new IllegalStateException("the broker was not started");
    }
    return running;
  }

  private boolean listens() {
    try (Socket socket = new Socket(InetAddress.getLoopbackAddress(), port)) {
      return socket.isConnected();
    } catch (IOException e) {
      return false;
    }
  }
}
