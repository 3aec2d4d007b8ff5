package meltkeeper.cli;

import java.util.List;
import meltkeeper.desk.PartChange;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Notes that a part was cleaned. */
@Command(
    name = "clean",
    description = "Notes that a part was cleaned, on its hot end or off it.",
    footer = {"", "Example: meltkeeper part clean N-003 --restores 0.7"})
final class PartCleanCommand extends ChangeCommand {

  @Parameters(paramLabel = "ID", description = "The part.")
  private String id = "";

  @Option(
      names = "--restores",
      required = true,
      paramLabel = "SHARE",
      description = "The share of its age that you believe this undid: 0 none, 1 as good as new.")
  private double restores;

  @Mixin private AtOption at = new AtOption();

  PartCleanCommand(OpenDesk.Opening opening) {
    super(opening);
  }

  @Override
  PartChange change(OpenDesk open) {
    return open.desk().acts().clean(id, restores, at.nanos(open), open.nowNanos());
  }

  @Override
  List<String> cautions() {
    return Cautions.AT_CLEANING;
  }
}
