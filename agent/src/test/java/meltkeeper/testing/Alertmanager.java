package meltkeeper.testing;

import static org.awaitility.Awaitility.await;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;

/** A real Alertmanager on a port of the loopback interface, without companions. */
public final class Alertmanager implements AutoCloseable {

  private final RunningProgram program;
  private final int port;

  private Alertmanager(RunningProgram program, int port) {
    this.program = program;
    this.port = port;
  }

  /**
   * Starts it and waits until it answers.
   *
   * @param folder for its data and log
   * @param configuration its file
   */
  public static Alertmanager start(Path folder, Path configuration) throws IOException {
    int port = RealParts.freePort();
    RunningProgram program =
        RunningProgram.start(
            folder.resolve("alertmanager.log"),
            List.of(
                RealParts.find("prometheus-alertmanager").toString(),
                "--config.file=" + configuration,
                "--storage.path=" + folder.resolve("alertmanager-data"),
                "--web.listen-address=127.0.0.1:" + port,
                "--cluster.listen-address="));
    await("alertmanager answers")
        .atMost(Duration.ofSeconds(60))
        .until(() -> new LocalHttp(port).answers("/-/ready"));
    return new Alertmanager(program, port);
  }

  public int port() {
    return port;
  }

  @Override
  public void close() {
    program.close();
  }
}
