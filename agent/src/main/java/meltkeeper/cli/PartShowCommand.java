package meltkeeper.cli;

import static meltkeeper.cli.PartListCommand.tenths;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.Instant;
import java.util.stream.Collectors;
import meltkeeper.cli.report.TextTable;
import meltkeeper.desk.AnswerJson;
import meltkeeper.desk.PartAnswer;
import meltkeeper.desk.PartLine;
import meltkeeper.desk.SharedEdge;
import meltkeeper.part.Moments;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Shows one part with its history. */
@Command(
    name = "show",
    description = "Shows a part: its hours by temperature, where it was, what happened to it.",
    footer = {"", "Example: meltkeeper part show L-014"})
final class PartShowCommand extends DeskCommand {

  private static final BigDecimal SECONDS_AN_HOUR = BigDecimal.valueOf(3600);

  @Parameters(paramLabel = "ID", description = "The part.")
  private String id = "";

  @Option(names = "--json", description = "Print one JSON object.")
  private boolean json;

  PartShowCommand(OpenDesk.Opening opening) {
    super(opening);
  }

  @Override
  void answer(OpenDesk open) {
    PartAnswer part = open.desk().parts().part(id);
    if (json) {
      out().println(AnswerJson.print(part));
      return;
    }
    head(part.line(), open);
    TextTable bands = new TextTable("Band °C", ">Hot h");
    part.line().total().hotSeconds().forEach((band, seconds) -> bands.row(band, hours(seconds)));
    section(bands, part.line().total().hotSeconds().isEmpty());
    TextTable stays = new TextTable("On", "From", "Until", ">Hot h", "Shared in proportion");
    for (PartAnswer.Stay stay : part.stays()) {
      stays.row(
          stay.printer() + (stay.hotEnd() == 0 ? "" : "/" + stay.hotEnd()),
          words(stay.from(), open),
          stay.until().map(until -> words(until, open)).orElse("now"),
          tenths(stay.hotHours()),
          stay.shared().stream().map(e -> span(e, open)).collect(Collectors.joining(", ")));
    }
    section(stays, part.stays().isEmpty());
    TextTable history = new TextTable("When", "It was", "");
    part.history().forEach(e -> history.row(words(e.at(), open), e.what(), e.detail()));
    section(history, part.history().isEmpty());
  }

  private void head(PartLine part, OpenDesk open) {
    out()
        .println(
            part.id()
                + ", "
                + part.kind()
                + part.variant().map(variant -> " (" + variant + ")").orElse("")
                + ": "
                + PartListCommand.standing(part)
                + part.fitted().map(p -> " since " + words(p.since(), open)).orElse(""));
    out()
        .printf(
            "Hot %s h, of these %s h told, %s h bridged, %s h without feeding; besides %s h"
                + " unobserved%n",
            tenths(part.hotHours()),
            tenths(part.earlierHours()),
            hours(part.total().bridgedSeconds()),
            hours(part.total().idleSeconds()),
            hours(part.total().unobservedSeconds()));
    out()
        .printf(
            "Printing %s h, %s m of filament%n",
            hours(part.total().printingSeconds()), tenths(part.filamentMetres()));
  }

  private void section(TextTable table, boolean empty) {
    if (!empty) {
      out().println();
      table.print(out());
    }
  }

  private static String span(SharedEdge edge, OpenDesk open) {
    return words(edge.from(), open) + " to " + words(edge.until(), open);
  }

  private static String hours(BigDecimal seconds) {
    return seconds.divide(SECONDS_AN_HOUR, 1, RoundingMode.HALF_UP).toPlainString();
  }

  private static String words(Instant at, OpenDesk open) {
    return Moments.words(Moments.nanos(at), open.shop().zone());
  }
}
