package meltkeeper.store.sql;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** The committing program in a process of its own; killed, not asked to end. */
final class Child implements AutoCloseable {

  private final Process process;
  private final BufferedReader printed;

  private Child(Process process) {
    this.process = process;
    this.printed =
        new BufferedReader(new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8));
  }

  static Child committing(String url, long pauseMicros) throws IOException {
    return committing(url, pauseMicros, List.of());
  }

  /** The same with options for its Java. */
  static Child committing(String url, long pauseMicros, List<String> javaOptions)
      throws IOException {
    List<String> command = new ArrayList<>();
    command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    command.add("-XX:TieredStopAtLevel=1");
    command.addAll(javaOptions);
    command.addAll(List.of("-cp", System.getProperty("java.class.path")));
    command.addAll(List.of(CommittingProgram.class.getName(), url, String.valueOf(pauseMicros)));
    return new Child(new ProcessBuilder(command).redirectErrorStream(true).start());
  }

  long pid() {
    return process.pid();
  }

  boolean isAlive() {
    return process.isAlive();
  }

  /** The next commit that it carried out; empty when it has ended. */
  Optional<Integer> nextCommit() throws IOException {
    String line = printed.readLine();
    if (line == null) {
      return Optional.empty();
    }
    if (!line.matches("\\d+")) {
      throw new IllegalStateException("the child says: " + line);
    }
    return Optional.of(Integer.valueOf(line));
  }

  /** Kills it at once (SIGKILL); what it had printed can still be read. */
  void kill() {
    process.toHandle().destroyForcibly();
    process.onExit().join();
  }

  @Override
  public void close() throws IOException {
    kill();
    printed.close();
  }
}
