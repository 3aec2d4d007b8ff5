package meltkeeper.cli;

import java.util.Optional;
import java.util.OptionalLong;
import picocli.CommandLine.Option;

/** The option that tells when something happened. */
final class AtOption {

  @Option(
      names = "--at",
      paramLabel = "TIME",
      description = {
        "When it happened; now, if not given. May be long past:",
        "2026-03-02T08:00, 2026-03-02T08:00+01:00, 08:00 for today,",
        "or \"yesterday 16:30\"."
      })
  private Optional<String> at = Optional.empty();

  OptionalLong nanos(OpenDesk open) {
    return at.isPresent()
        ? OptionalLong.of(open.when().at("--at", at.get()))
        : OptionalLong.empty();
  }
}
