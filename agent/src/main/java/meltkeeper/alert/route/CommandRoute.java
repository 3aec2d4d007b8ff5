package meltkeeper.alert.route;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.concurrent.TimeUnit;

/** Runs a program for each alert; it has taken the alert when it ends with exit code 0. */
final class CommandRoute implements Route {

  private final RouteSettings.Command way;
  private final Duration timeout;

  CommandRoute(RouteSettings.Command way, Duration timeout) {
    this.way = way;
    this.timeout = timeout;
  }

  @Override
  public void deliver(Message message) throws UndeliveredException, InterruptedException {
    Process process = started();
    try {
      byte[] json = AlertJson.of(message).toString().getBytes(StandardCharsets.UTF_8);
      try (OutputStream in = process.getOutputStream()) {
        in.write(json);
      } catch (IOException e) {
        // A program may end without reading; its exit code tells.
      }
      if (!process.waitFor(timeout.toMillis(), TimeUnit.MILLISECONDS)) {
        throw UndeliveredException.forNow("it did not end within " + timeout.toMillis() + " ms");
      }
      if (process.exitValue() != 0) {
        throw UndeliveredException.forNow("it ended with exit code " + process.exitValue());
      }
    } finally {
      process.descendants().forEach(ProcessHandle::destroyForcibly);
      process.destroyForcibly();
    }
  }

  private Process started() throws UndeliveredException {
    try {
      return new ProcessBuilder(way.program().toString())
          .redirectOutput(ProcessBuilder.Redirect.DISCARD)
          .redirectError(ProcessBuilder.Redirect.DISCARD)
          .start();
    } catch (IOException e) {
      throw UndeliveredException.forNow(UndeliveredException.words(e));
    }
  }
}
