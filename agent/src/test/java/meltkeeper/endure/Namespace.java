package meltkeeper.endure;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import meltkeeper.testing.RealParts;

/** Linux namespaces of our own: a view of the mounts or of the network that nobody else has. */
final class Namespace {

  private Namespace() {}

  /**
   * The words before a command that is to run in namespaces of its own.
   *
   * @param kinds options of {@code unshare}, such as {@code --net}
   * @param preparation a shell command that is carried out in them first
   */
  static List<String> command(List<String> kinds, String preparation)
      throws IOException, InterruptedException {
    List<String> command = new ArrayList<>();
    command.add(RealParts.find("unshare").toString());
    command.addAll(List.of("--user", "--map-root-user"));
    command.addAll(kinds);
    List<String> trial = new ArrayList<>(command);
    trial.add("true");
    if (code(trial) != 0) {
      throw RealParts.missing("unshare " + kinds + " of this system");
    }
    command.addAll(List.of("sh", "-c", preparation + " && exec \"$@\"", "sh"));
    return command;
  }

  /** Words before a command that is to run in the namespaces of a process. */
  static List<String> of(long pid) {
    return List.of(
        RealParts.find("nsenter").toString(),
        "--target",
        Long.toString(pid),
        "--user",
        "--net",
        "--preserve-credentials");
  }

  /** Runs a command to its end; its exit code. */
  static int code(List<String> command) throws IOException, InterruptedException {
    Process process =
        new ProcessBuilder(command)
            .redirectErrorStream(true)
            .redirectOutput(ProcessBuilder.Redirect.DISCARD)
            .start();
    if (!process.waitFor(30, TimeUnit.SECONDS)) {
      process.destroyForcibly();
      throw new AssertionError(command + " does not end");
    }
    return process.exitValue();
  }
}
