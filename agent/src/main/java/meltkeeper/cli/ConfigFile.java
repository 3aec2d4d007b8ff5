package meltkeeper.cli;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import meltkeeper.config.ConfigReader;
import meltkeeper.config.Settings;
import meltkeeper.protocol.Fault;
import picocli.CommandLine.Option;

/** The option that names the configuration, and the reading of it. */
final class ConfigFile {

  private static final List<Path> PLACES =
      List.of(Path.of("meltkeeper.yaml"), Path.of("/etc/meltkeeper/meltkeeper.yaml"));

  @Option(
      names = "--config",
      paramLabel = "FILE",
      description = {
        "The configuration; without it ./meltkeeper.yaml,",
        "then /etc/meltkeeper/meltkeeper.yaml."
      })
  private Optional<Path> file = Optional.empty();

  /**
   * The settings.
   *
   * @throws FaultsException with every fault of the file
   */
  Settings settings() {
    return ConfigReader.read(path())
        .fold(
            valid -> valid,
            faults -> {
              throw new FaultsException(faults);
            });
  }

  /** The file that is read. */
  Path path() {
    return file.or(() -> PLACES.stream().filter(Files::exists).findFirst())
        .orElseThrow(
            () ->
                new FaultsException(
                    List.of(
                        Fault.of(
                            "--config",
                            "nothing",
                            "a file named here, or one of " + PLACES,
                            "write one: docs/configure.md begins with an example"))));
  }
}
