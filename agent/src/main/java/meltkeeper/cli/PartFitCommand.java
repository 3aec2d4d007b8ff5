package meltkeeper.cli;

import java.util.List;
import java.util.Optional;
import meltkeeper.desk.FitPart;
import meltkeeper.desk.PartChange;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Notes that a part went on a hot end. */
@Command(
    name = "fit",
    description = "Notes that a part went on a hot end; hours are its own from then on.",
    footer = {
      "",
      "Examples:",
      "  meltkeeper part fit L-014 --printer heron --at \"yesterday 16:30\"",
      "  meltkeeper part fit N-003 --printer ibis --prior-hours 120 --prior-spread 60 \\",
      "      --prior-temperature 220",
      "A stay that is over, told late:",
      "  meltkeeper part fit L-013 --printer heron --at 2026-01-05T08:00 \\",
      "      --until 2026-02-01T09:00 --because precaution"
    })
final class PartFitCommand extends ChangeCommand {

  @Parameters(paramLabel = "ID", description = "The part.")
  private String id = "";

  @Mixin private PlaceOption place = new PlaceOption();
  @Mixin private AtOption at = new AtOption();

  @ArgGroup(exclusive = false)
  private @Nullable Past past;

  @ArgGroup(exclusive = false)
  private @Nullable Off off;

  private static final class Past {
    @Option(
        names = "--prior-hours",
        required = true,
        paramLabel = "H",
        description = "Hot hours that it had run elsewhere before.")
    private double hours;

    @Option(
        names = "--prior-spread",
        paramLabel = "H",
        description = "How far off they may be, one standard deviation; 0 if not given.")
    private double spread;

    @Option(
        names = "--prior-temperature",
        required = true,
        paramLabel = "C",
        description = "The temperature that they were run at, °C.")
    private double celsius;
  }

  private static final class Off extends BecauseOption {
    @Option(
        names = "--until",
        required = true,
        paramLabel = "TIME",
        description = "When it came off again, for a stay that is over.")
    private String until = "";
  }

  PartFitCommand(OpenDesk.Opening opening) {
    super(opening);
  }

  @Override
  PartChange change(OpenDesk open) {
    return open.desk()
        .acts()
        .fit(
            new FitPart(
                id,
                place.printer,
                place.hotEnd,
                at.nanos(open),
                Optional.ofNullable(past).map(p -> new FitPart.Past(p.hours, p.spread, p.celsius)),
                Optional.ofNullable(off)
                    .map(
                        o ->
                            new FitPart.Off(
                                open.when().at("--until", o.until), o.because(), o.notThisPart))),
            open.nowNanos());
  }

  @Override
  List<String> cautions() {
    return Cautions.AT_A_SWAP;
  }
}
