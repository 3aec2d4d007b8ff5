package meltkeeper.cli;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import meltkeeper.cli.report.TextTable;
import meltkeeper.desk.AnswerJson;
import meltkeeper.desk.PartFilter;
import meltkeeper.desk.PartLine;
import meltkeeper.part.Moments;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** Lists parts. */
@Command(
    name = "list",
    description = "Lists the parts that are in use, with their hours.",
    footer = {"", "Example: meltkeeper part list --kind liner --all"})
final class PartListCommand extends DeskCommand {

  @Option(names = "--kind", paramLabel = "KIND", description = "Only parts of that kind.")
  private Optional<String> kind = Optional.empty();

  @Option(names = "--printer", paramLabel = "NAME", description = "Only parts that are on it now.")
  private Optional<String> printer = Optional.empty();

  @Option(names = "--all", description = "Those thrown away or ended on paper, too.")
  private boolean all;

  @Option(names = "--json", description = "Print one JSON object.")
  private boolean json;

  PartListCommand(OpenDesk.Opening opening) {
    super(opening);
  }

  @Override
  void answer(OpenDesk open) {
    List<PartLine> parts =
        open.desk().parts().parts(new PartFilter(kind, printer, all), open.nowNanos());
    if (json) {
      out().println(AnswerJson.print(Map.of("parts", parts)));
      return;
    }
    if (parts.isEmpty()) {
      out().println("No such part. Make one known: meltkeeper part add KIND");
      return;
    }
    table(parts, open.shop().zone()).print(out());
  }

  /** The parts as a table for people. */
  static TextTable table(List<PartLine> parts, ZoneId zone) {
    TextTable table =
        new TextTable(
            "Part", "Kind", "Variant", "Standing", "Since", ">Hot h", "Most at °C", ">Filament m");
    for (PartLine part : parts) {
      table.row(
          part.id(),
          part.kind(),
          part.variant().orElse(""),
          standing(part),
          part.fitted().map(place -> since(place, zone)).orElse(""),
          tenths(part.hotHours()),
          part.mostIn().orElse(""),
          tenths(part.filamentMetres()));
    }
    return table;
  }

  private static String since(PartLine.Place place, ZoneId zone) {
    return Moments.words(Moments.nanos(place.since()), zone);
  }

  static String standing(PartLine part) {
    return part.fitted().map(PartListCommand::place).orElse(part.ending());
  }

  static String place(PartLine.Place place) {
    return "on " + place.printer() + (place.hotEnd() == 0 ? "" : "/" + place.hotEnd());
  }

  static String tenths(BigDecimal value) {
    return value.setScale(1, RoundingMode.HALF_UP).toPlainString();
  }
}
