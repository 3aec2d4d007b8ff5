package meltkeeper.cli;

import java.util.Arrays;
import java.util.Optional;
import meltkeeper.cli.report.ReportFormat;
import meltkeeper.desk.Report;
import picocli.CommandLine.Command;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.Option;
import picocli.CommandLine.TypeConversionException;

/** Hours, swaps, jams, costs. */
@Command(
    name = "report",
    description = "Hours by temperature, printing, filament, swaps, jams and costs by printer.",
    footer = {
      "",
      "Examples:",
      "  meltkeeper report --since 7d",
      "  meltkeeper report --since 2026-01-01 --until 2026-02-01T00:00 --format html > january.html"
    })
final class ReportCommand extends DeskCommand {

  @Option(
      names = "--since",
      paramLabel = "D",
      defaultValue = "30d",
      description = "How far back: 12h, 30d (default), 8w; or a date, 2026-03-01; or a time.")
  private String since = "";

  @Option(names = "--until", paramLabel = "TIME", description = "Where it ends; now, if not given.")
  private Optional<String> until = Optional.empty();

  @Option(
      names = "--format",
      paramLabel = "FORMAT",
      defaultValue = "text",
      converter = FormatWord.class,
      description = "One of text (default), csv, json, html.")
  private ReportFormat format = ReportFormat.TEXT;

  @Option(names = "--json", description = "The same as --format json.")
  private boolean json;

  private static final class FormatWord implements ITypeConverter<ReportFormat> {
    @Override
    public ReportFormat convert(String word) {
      return Arrays.stream(ReportFormat.values())
          .filter(format -> format.toString().equals(word))
          .findFirst()
          .orElseThrow(
              () ->
                  new TypeConversionException("\"" + word + "\" is none of text, csv, json, html"));
    }
  }

  ReportCommand(OpenDesk.Opening opening) {
    super(opening);
  }

  @Override
  void answer(OpenDesk open) {
    long end = until.map(told -> open.when().at("--until", told)).orElse(open.nowNanos());
    Report report = open.desk().reports().report(open.when().since("--since", since), end);
    out()
        .print(
            (json ? ReportFormat.JSON : format)
                .print(report, () -> open.outlook().curves(open.nowNanos())));
    out().flush();
  }
}
