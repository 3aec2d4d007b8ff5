package meltkeeper.testing;

import static org.assertj.core.api.Assertions.fail;
import static org.junit.jupiter.api.Assumptions.abort;

import java.io.File;
import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * Finds the programs that a test runs for real. A missing one skips the test visibly, and fails it
 * where the system property {@code real.parts.required} is {@code true}.
 */
public final class RealParts {

  private static final String REQUIRED = "real.parts.required";

  private RealParts() {}

  /** The path of a program, such as {@code mosquitto}. */
  public static Path find(String program) {
    return found(program).orElseThrow(() -> missing(program));
  }

  /** A port of the loopback interface that nobody listens on now. */
  public static int freePort() throws IOException {
    try (ServerSocket socket = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
      return socket.getLocalPort();
    }
  }

  private static Optional<Path> found(String program) {
    String path = Optional.ofNullable(System.getenv("PATH")).orElse("");
    return Stream.concat(Stream.of(path.split(File.pathSeparator)), Stream.of("/usr/sbin"))
        .map(folder -> Path.of(folder, program))
        .filter(Files::isExecutable)
        .findFirst();
  }

  /**
   * Says that something is not there that a test needs: the test is skipped, or fails.
   *
   * @param what such as a program's name
   * @return nothing, so that a caller can write {@code throw}
   */
  public static AssertionError missing(String what) {
    String words = what + " is not installed or not permitted";
    return Boolean.getBoolean(REQUIRED) ? fail(words + ", but " + REQUIRED) : abort(words);
  }
}
