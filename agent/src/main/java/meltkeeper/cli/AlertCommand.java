package meltkeeper.cli;

import picocli.CommandLine;
import picocli.CommandLine.Command;

/** Everything about alerts. */
@Command(
    name = "alert",
    description = "Shows alerts, acknowledges them, and tries the routes that they go.",
    synopsisSubcommandLabel = "COMMAND",
    footer = {
      "",
      "Examples:",
      "  meltkeeper alert test phone",
      "  meltkeeper alert list",
      "  meltkeeper alert acknowledge 1a6a"
    })
final class AlertCommand {

  private AlertCommand() {}

  /** The command with its subcommands. */
  static CommandLine line(OpenDesk.Opening opening) {
    return new CommandLine(new AlertCommand())
        .addSubcommand(new AlertListCommand(opening))
        .addSubcommand(new AlertAcknowledgeCommand(opening))
        .addSubcommand(new AlertTestCommand());
  }
}
