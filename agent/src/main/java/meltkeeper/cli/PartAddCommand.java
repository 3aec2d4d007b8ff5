package meltkeeper.cli;

import java.util.Optional;
import meltkeeper.desk.AddPart;
import meltkeeper.desk.PartChange;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Makes a part known. */
@Command(
    name = "add",
    description = "Makes a part known and says its id.",
    footer = {"", "Example: meltkeeper part add liner --variant ptfe-brown"})
final class PartAddCommand extends ChangeCommand {

  @Parameters(paramLabel = "KIND", description = "A kind of the configuration, such as liner.")
  private String kind = "";

  @Option(
      names = "--id",
      paramLabel = "ID",
      description = "An id of your own; the next free one (L-014) if not given.")
  private Optional<String> id = Optional.empty();

  @Option(
      names = "--variant",
      paramLabel = "WORD",
      description = "Make or material that tells it from others of its kind.")
  private Optional<String> variant = Optional.empty();

  PartAddCommand(OpenDesk.Opening opening) {
    super(opening);
  }

  @Override
  PartChange change(OpenDesk open) {
    return open.desk().acts().add(new AddPart(kind, id, variant), open.nowNanos());
  }
}
