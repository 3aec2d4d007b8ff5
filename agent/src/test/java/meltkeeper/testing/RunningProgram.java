package meltkeeper.testing;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;

/** A program of the outside that a test started, and stops. */
public final class RunningProgram implements AutoCloseable {

  private final Process process;

  private RunningProgram(Process process) {
    this.process = process;
  }

  /** Starts it with its output in a file. */
  public static RunningProgram start(Path log, List<String> command) throws IOException {
    return new RunningProgram(
        new ProcessBuilder(command)
            .redirectErrorStream(true)
            .redirectOutput(ProcessBuilder.Redirect.appendTo(log.toFile()))
            .start());
  }

  public boolean isRunning() {
    return process.isAlive();
  }

  /** Asks it to end, as a service manager would, and waits until it has. */
  public void terminate() throws InterruptedException {
    process.destroy();
    if (!process.waitFor(10, TimeUnit.SECONDS)) {
      kill();
    }
  }

  /** Ends it as a power cut would. */
  public void kill() {
    process.destroyForcibly().onExit().join();
  }

  /** Stops it from doing anything, while its sockets stay open. */
  public void freeze() throws IOException, InterruptedException {
    signal("STOP");
  }

  /** Lets it go on. */
  public void thaw() throws IOException, InterruptedException {
    signal("CONT");
  }

  private void signal(String name) throws IOException, InterruptedException {
    new ProcessBuilder("kill", "-" + name, Long.toString(process.pid())).start().waitFor();
  }

  @Override
  public void close() {
    kill();
  }
}
