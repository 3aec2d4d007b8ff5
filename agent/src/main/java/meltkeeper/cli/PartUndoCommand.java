package meltkeeper.cli;

import java.util.Optional;
import java.util.OptionalLong;
import meltkeeper.desk.PartChange;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Takes an entry back. */
@Command(
    name = "undo",
    description = "Takes back something that was told of a part, as if it had never been.",
    footer = {"", "Example: meltkeeper part undo L-014 --at \"2026-03-02 08:00\""})
final class PartUndoCommand extends ChangeCommand {

  @Parameters(paramLabel = "ID", description = "The part.")
  private String id = "";

  @Option(
      names = "--at",
      paramLabel = "TIME",
      description = {
        "The time of what is to be taken back, as part show tells it;",
        "the last in time, if not given."
      })
  private Optional<String> at = Optional.empty();

  PartUndoCommand(OpenDesk.Opening opening) {
    super(opening);
  }

  @Override
  PartChange change(OpenDesk open) {
    OptionalLong when =
        at.isPresent() ? OptionalLong.of(open.when().at("--at", at.get())) : OptionalLong.empty();
    return open.desk().acts().undo(id, when);
  }
}
