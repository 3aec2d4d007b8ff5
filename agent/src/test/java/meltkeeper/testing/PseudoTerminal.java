package meltkeeper.testing;

import static org.awaitility.Awaitility.await;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** A real pseudo-terminal, kept by socat, whose other end is a TCP port of this computer. */
public final class PseudoTerminal {

  private final Path program = RealParts.find("socat");
  private final Path device;
  private final Path log;
  private final int port;
  private @Nullable RunningProgram running;

  /**
   * @param folder where the device's name and a log stand
   */
  public PseudoTerminal(Path folder, int port) {
    this.device = folder.resolve("ttyTEST");
    this.log = folder.resolve("socat.log");
    this.port = port;
  }

  /** The device's name, the same for each plugging. */
  public Path device() {
    return device;
  }

  /** Lets the device appear. */
  public void plug() throws IOException {
    running =
        RunningProgram.start(
            log,
            List.of(program.toString(), "PTY,link=" + device + ",rawer", "TCP:127.0.0.1:" + port));
    await("the device is there").atMost(Duration.ofSeconds(20)).until(() -> Files.exists(device));
  }

  /** Lets the device vanish, its name included. */
  public void unplug() throws InterruptedException {
    if (running != null) {
      running.terminate();
      running = null;
    }
  }
}
