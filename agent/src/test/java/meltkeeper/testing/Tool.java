package meltkeeper.testing;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;

/** A program of the outside that answers and ends, such as {@code promtool}. */
public record Tool(Path program) {

  private static final int PATIENCE_SECONDS = 60;

  /** What came of a call: its exit code, and all that it printed. */
  public record Answer(int code, String text) {}

  /** The program of that name; a missing one skips or fails the test as {@link RealParts} says. */
  public static Tool find(String program) {
    return new Tool(RealParts.find(program));
  }

  /** Runs it with nothing on its standard input. */
  public Answer run(String... arguments) throws IOException, InterruptedException {
    return runOn("", arguments);
  }

  /** Runs it with a text on its standard input. */
  public Answer runOn(String input, String... arguments) throws IOException, InterruptedException {
    Path in = Files.createTempFile("tool", ".in");
    Path out = Files.createTempFile("tool", ".out");
    try {
      Files.writeString(in, input);
      List<String> command = new ArrayList<>(List.of(program.toString()));
      command.addAll(List.of(arguments));
      Process process =
          new ProcessBuilder(command)
              .redirectErrorStream(true)
              .redirectInput(in.toFile())
              .redirectOutput(out.toFile())
              .start();
      if (!process.waitFor(PATIENCE_SECONDS, TimeUnit.SECONDS)) {
        process.destroyForcibly().onExit().join();
        throw new AssertionError(command + " did not end within " + PATIENCE_SECONDS + " s");
      }
      return new Answer(process.exitValue(), Files.readString(out, StandardCharsets.UTF_8));
    } finally {
      Files.delete(in);
      Files.delete(out);
    }
  }
}
