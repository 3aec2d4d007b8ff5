package meltkeeper.config;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.List;
import java.util.stream.Collectors;
import meltkeeper.protocol.Fault;

/** Reads configurations for tests as a shop would write them. */
final class Shop {

  static final String FILE = "meltkeeper.yaml";

  private Shop() {}

  static Settings settings(String text) {
    return ConfigReader.read(FILE, text)
        .fold(
            settings -> settings,
            faults -> {
              throw new AssertionError("unexpected faults: " + faults);
            });
  }

  /** A file with a secret, as its owner should keep it. */
  static Path secret(Path file, String text) throws IOException {
    Files.writeString(file, text);
    return Files.setPosixFilePermissions(file, PosixFilePermissions.fromString("rw-------"));
  }

  static List<Fault> faults(String text) {
    return ConfigReader.read(FILE, text).fold(settings -> List.of(), faults -> faults);
  }

  /** Each fault as a user sees it, one a line. */
  static String words(String text) {
    return faults(text).stream().map(Fault::toString).collect(Collectors.joining("\n"));
  }

  /** A file of the test's folder, found from the module's folder or the project's. */
  static String document(String name) {
    Path here = Path.of("docs", name);
    try {
      return Files.readString(Files.exists(here) ? here : Path.of("..", "docs", name));
    } catch (IOException e) {
      throw new AssertionError("no docs/" + name, e);
    }
  }
}
