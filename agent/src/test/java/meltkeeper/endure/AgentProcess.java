package meltkeeper.endure;

import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import meltkeeper.cli.AgentProgram;

/** The agent in a process of its own, that can be killed at any moment. */
final class AgentProcess implements AutoCloseable {

  private static final String COMMIT_MILLIS = "50";

  private static final HttpClient HTTP = HttpClient.newHttpClient();

  private final Process process;
  private final Path log;

  private AgentProcess(Process process, Path log) {
    this.process = process;
    this.log = log;
  }

  /**
   * Starts it.
   *
   * @param before words before the command, such as those that put it into a namespace
   * @param log for all that it prints
   */
  static AgentProcess start(Start start, List<String> before, Path config, Path log)
      throws IOException {
    return start(start, before, config, log, 0);
  }

  /** The same with a wall clock that is off. */
  static AgentProcess start(
      Start start, List<String> before, Path config, Path log, long offSeconds) throws IOException {
    List<String> command = new ArrayList<>(before);
    command.addAll(
        start.java(
            AgentProgram.class.getName(),
            config.toString(),
            COMMIT_MILLIS,
            Long.toString(offSeconds)));
    return started(command, log);
  }

  /** Starts {@code run} as the shop would. */
  static AgentProcess run(Path config, Path log) throws IOException {
    return started(
        Start.USUAL.java("meltkeeper.cli.Main", "run", "--config", config.toString()), log);
  }

  private static AgentProcess started(List<String> command, Path log) throws IOException {
    return new AgentProcess(
        new ProcessBuilder(command).redirectErrorStream(true).redirectOutput(log.toFile()).start(),
        log);
  }

  long pid() {
    return process.pid();
  }

  boolean isAlive() {
    return process.isAlive();
  }

  String logged() throws IOException {
    return Files.readString(log, StandardCharsets.UTF_8);
  }

  /** The port of its page, once it listens. */
  Optional<Integer> port() throws IOException {
    return logged()
        .lines()
        .filter(line -> line.startsWith(AgentProgram.READY))
        .map(line -> Integer.valueOf(line.substring(AgentProgram.READY.length())))
        .findFirst();
  }

  /** Waits until it listens; it must not end before. */
  int awaitReady() throws IOException {
    long patience = System.nanoTime() + TimeUnit.SECONDS.toNanos(60);
    while (System.nanoTime() < patience && process.isAlive()) {
      Optional<Integer> port = port();
      if (port.isPresent()) {
        return port.get();
      }
      LockSupport.parkNanos(5_000_000);
    }
    String state = process.isAlive() ? "not within a minute" : "ended with " + process.exitValue();
    throw new AssertionError("the agent did not begin, " + state + ":\n" + logged());
  }

  /** What a path of its page answers now. */
  String get(String path) throws IOException, InterruptedException {
    URI uri = URI.create("http://127.0.0.1:" + awaitReady() + path);
    HttpRequest request = HttpRequest.newBuilder(uri).timeout(Duration.ofSeconds(10)).build();
    return HTTP.send(request, HttpResponse.BodyHandlers.ofString()).body();
  }

  /** Ends it as a power cut would. */
  void kill() {
    process.descendants().forEach(ProcessHandle::destroyForcibly);
    process.destroyForcibly().onExit().join();
  }

  /** Asks it to end in good order, and waits until it has. */
  void end() throws IOException, InterruptedException {
    order("end");
    if (!process.waitFor(60, TimeUnit.SECONDS)) {
      throw new AssertionError("the agent did not end:\n" + logged());
    }
  }

  /** Sets its wall clock to be off by so many seconds. */
  void setWall(long offSeconds) throws IOException {
    order(AgentProgram.WALL + offSeconds);
  }

  private void order(String line) throws IOException {
    process.getOutputStream().write((line + "\n").getBytes(StandardCharsets.US_ASCII));
    process.getOutputStream().flush();
  }

  /** Waits until it has ended by itself; its exit code. */
  int exitCode() throws IOException, InterruptedException {
    if (!process.waitFor(60, TimeUnit.SECONDS)) {
      throw new AssertionError("the agent did not end:\n" + logged());
    }
    return process.exitValue();
  }

  @Override
  public void close() {
    kill();
  }
}
