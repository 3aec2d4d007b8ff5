package meltkeeper.cli;

import picocli.CommandLine;
import picocli.CommandLine.Command;

/** Everything about parts. */
@Command(
    name = "part",
    description = "Tells the agent of parts: what was fitted, taken off, cleaned, and when.",
    synopsisSubcommandLabel = "COMMAND",
    footer = {
      "",
      "A swap of a jammed liner:",
      "  meltkeeper part remove --printer heron --kind liner --because jam",
      "  meltkeeper part add liner",
      "  meltkeeper part fit L-015 --printer heron",
      "Told late, hours move to the part that was fitted at the time: add --at \"yesterday 16:30\"."
    })
final class PartCommand {

  private PartCommand() {}

  /** The command with its subcommands. */
  static CommandLine line(OpenDesk.Opening opening) {
    return new CommandLine(new PartCommand())
        .addSubcommand(new PartAddCommand(opening))
        .addSubcommand(new PartFitCommand(opening))
        .addSubcommand(new PartRemoveCommand(opening))
        .addSubcommand(new PartCleanCommand(opening))
        .addSubcommand(new PartRetireCommand(opening))
        .addSubcommand(new PartUndoCommand(opening))
        .addSubcommand(new PartListCommand(opening))
        .addSubcommand(new PartShowCommand(opening))
        .addSubcommand(new PartImportCommand(opening));
  }
}
