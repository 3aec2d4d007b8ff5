package meltkeeper.cli;

import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import meltkeeper.cli.report.TextTable;
import meltkeeper.desk.AlertLine;
import meltkeeper.desk.AnswerJson;
import meltkeeper.part.Moments;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** Lists alerts. */
@Command(
    name = "list",
    description = "Lists the latest alerts, the newest first, and how far each has come.",
    footer = {"", "Example: meltkeeper alert list --most 100 --json"})
final class AlertListCommand extends DeskCommand {

  @Option(
      names = "--most",
      paramLabel = "N",
      defaultValue = "20",
      description = "How many at most: 20, if not given.")
  private int most;

  @Option(names = "--json", description = "Print one JSON object.")
  private boolean json;

  AlertListCommand(OpenDesk.Opening opening) {
    super(opening);
  }

  @Override
  void answer(OpenDesk open) {
    if (most < 1) {
      throw misused("--most: found \"" + most + "\"; allowed: 1 or more");
    }
    List<AlertLine> alerts = open.desk().alerts().latest(most);
    if (json) {
      out().println(AnswerJson.print(Map.of("alerts", alerts)));
      return;
    }
    if (alerts.isEmpty()) {
      out().println("There was no alert yet.");
      return;
    }
    TextTable table = new TextTable("Id", "At", "Topic", "Phase", "Of", "Deliveries", "Seen to by");
    for (AlertLine alert : alerts) {
      table.row(
          alert.id(),
          Moments.words(Moments.nanos(alert.at()), open.shop().zone()),
          alert.topic(),
          alert.phase(),
          of(alert),
          deliveries(alert),
          alert.acknowledgedBy().orElse(""));
    }
    table.print(out());
  }

  private static String of(AlertLine alert) {
    return alert
        .part()
        .or(
            () ->
                alert
                    .printer()
                    .map(
                        printer ->
                            printer
                                + alert
                                    .hotEnd()
                                    .filter(index -> index > 0)
                                    .map(index -> "/" + index)
                                    .orElse("")))
        .orElse("the agent");
  }

  private static String deliveries(AlertLine alert) {
    return alert.deliveries().isEmpty()
        ? "history, called nobody"
        : alert.deliveries().stream()
            .map(AlertListCommand::words)
            .collect(Collectors.joining("; "));
  }

  private static String words(AlertLine.OnRoute delivery) {
    return delivery.route()
        + " "
        + delivery.state()
        + (delivery.detail().isEmpty() ? "" : " (" + delivery.detail() + ")");
  }
}
