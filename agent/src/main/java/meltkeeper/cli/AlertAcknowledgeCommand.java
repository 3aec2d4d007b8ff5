package meltkeeper.cli;

import java.util.Optional;
import meltkeeper.desk.AlertLine;
import meltkeeper.desk.AnswerJson;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Says that somebody has seen to it. */
@Command(
    name = "acknowledge",
    description = "Says that somebody sees to it: no more reminders, and no jam action.",
    footer = {"", "Example: meltkeeper alert acknowledge 1a6a --by Mira"})
final class AlertAcknowledgeCommand extends DeskCommand {

  @Parameters(paramLabel = "ID", description = "The alert's id, or its first characters.")
  private String id = "";

  @Option(names = "--by", paramLabel = "NAME", description = "Who; this user, if not given.")
  private Optional<String> by = Optional.empty();

  @Option(names = "--json", description = "Print one JSON object.")
  private boolean json;

  AlertAcknowledgeCommand(OpenDesk.Opening opening) {
    super(opening);
  }

  @Override
  void answer(OpenDesk open) {
    String who = by.orElse(System.getProperty("user.name", "somebody"));
    AlertLine alert = open.desk().alerts().acknowledge(id, who, open.nowNanos());
    if (json) {
      out().println(AnswerJson.print(alert));
      return;
    }
    out().println(alert.id() + " is acknowledged by " + alert.acknowledgedBy().orElse(who) + ".");
    out().println(alert.text());
    alert.cautions().forEach(out()::println);
  }
}
