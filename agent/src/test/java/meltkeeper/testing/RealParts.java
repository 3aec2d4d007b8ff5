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
import java.util.concurrent.ThreadLocalRandom;
import java.util.stream.IntStream;
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

  /**
   * A port of the loopback interface that nobody listens on now. It is none of those that the
   * kernel gives to outgoing connections, so that nobody has it a moment later.
   */
  public static int freePort() {
    return IntStream.generate(() -> ThreadLocalRandom.current().nextInt(20_000, 32_768))
        .limit(100)
        .filter(RealParts::isFree)
        .findFirst()
        .orElseThrow(() -> new IllegalStateException("no port is free"));
  }

  private static boolean isFree(int port) {
    try (ServerSocket socket = new ServerSocket(port, 1, InetAddress.getLoopbackAddress())) {
      return socket.isBound();
    } catch (IOException e) {
      return false;
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
