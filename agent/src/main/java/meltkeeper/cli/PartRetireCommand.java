package meltkeeper.cli;

import meltkeeper.desk.PartChange;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;

/** Notes that a part was thrown away. */
@Command(
    name = "retire",
    description = {
      "Notes that a part was thrown away; takes it off if it was fitted.",
      "If it failed, say so first: part remove ID --because jam."
    },
    footer = {"", "Example: meltkeeper part retire N-003"})
final class PartRetireCommand extends ChangeCommand {

  @Parameters(paramLabel = "ID", description = "The part.")
  private String id = "";

  @Mixin private AtOption at = new AtOption();

  PartRetireCommand(OpenDesk.Opening opening) {
    super(opening);
  }

  @Override
  PartChange change(OpenDesk open) {
    return open.desk().acts().retire(id, at.nanos(open), open.nowNanos());
  }
}
