package meltkeeper.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import meltkeeper.cli.outlook.RiskText;
import meltkeeper.desk.AnswerJson;
import meltkeeper.outlook.Batch;
import meltkeeper.outlook.RiskAnswer;
import meltkeeper.outlook.RiskQuestion;
import meltkeeper.outlook.Stretch;
import meltkeeper.protocol.Fault;
import meltkeeper.protocol.HotEnd;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** Whether the fitted parts get through a batch. */
@Command(
    name = "risk",
    description = {
      "Before a batch: how likely a fitted part fails during it, and whether to swap first."
    },
    footer = {
      "",
      "Examples:",
      "  meltkeeper risk --printer heron --hours 14 --temperature 225",
      "  meltkeeper risk --printer heron --hours 6 --temperature 215 --hours 3 --temperature 240",
      "  meltkeeper risk --printer heron --hours 14 --temperature 225 --at-most 5%%",
      "  meltkeeper risk --printer heron --gcode labels.gcode --gcode drawers.gcode"
    })
final class RiskCommand extends DeskCommand {

  @Option(names = "--printer", required = true, paramLabel = "P", description = "The printer.")
  private String printer = "";

  @Option(
      names = "--hot-end",
      paramLabel = "N",
      defaultValue = "0",
      description = "Which of its hot ends --hours are on; the first is 0, the default.")
  private int hotEnd;

  @ArgGroup(exclusive = false, multiplicity = "0..*")
  private List<Segment> segments = new ArrayList<>();

  @Option(
      names = "--gcode",
      paramLabel = "FILE",
      description =
          "A G-code file, its time and heat reckoned from its own moves; may be repeated.")
  private List<Path> files = new ArrayList<>();

  @Option(
      names = "--at-most",
      paramLabel = "RISK",
      description = "Also tell the longest batch of that make under this risk, such as 5%%.")
  private Optional<String> atMost = Optional.empty();

  @Option(names = "--json", description = "Print one JSON object.")
  private boolean json;

  /** A stretch of the batch. */
  static final class Segment {
    @Option(
        names = "--hours",
        required = true,
        paramLabel = "H",
        description = "Hours at the --temperature beside it; may be repeated.")
    private double hours;

    @Option(
        names = "--temperature",
        required = true,
        paramLabel = "T",
        description = "°C of the hot end.")
    private double celsius;

    private Stretch stretch() {
      return new Stretch(hours, celsius);
    }
  }

  RiskCommand(OpenDesk.Opening opening) {
    super(opening);
  }

  private Batch batch(OpenDesk open) {
    double hotAbove = open.hotAboveCelsius(new HotEnd(printer, hotEnd));
    return Stream.concat(
            segments.stream().map(segment -> segment.stretch().on(hotEnd, hotAbove)),
            files.stream()
                .map(
                    file ->
                        GcodeFile.batch(
                            file,
                            open.motion(printer),
                            index -> open.hotAboveCelsius(new HotEnd(printer, index)))))
        .reduce(Batch::then)
        .orElseThrow(() -> misused("give --hours and --temperature, or --gcode FILE"));
  }

  @Override
  void answer(OpenDesk open) {
    List<Fault> faults = new ArrayList<>(open.shop().checkHotEnd(printer, hotEnd));
    segments.forEach(
        segment ->
            segment.stretch().faults().stream()
                .map(f -> Fault.of("--" + f.key(), f.found(), f.allowed(), f.mend()))
                .forEach(faults::add));
    if (!faults.isEmpty()) {
      throw new FaultsException(faults);
    }
    Batch batch = batch(open);
    RiskAnswer answer =
        open.outlook()
            .risk(
                new RiskQuestion(
                    printer, batch, atMost.map(text -> ShareOption.share("--at-most", text))),
                open.nowNanos());
    if (json) {
      out().println(AnswerJson.print(answer));
    } else {
      RiskText.print(answer, out());
    }
    out().flush();
  }
}
