package meltkeeper.cli;

import java.util.List;
import java.util.Optional;
import meltkeeper.desk.PartChange;
import meltkeeper.desk.RemovePart;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Notes that a part came off. */
@Command(
    name = "remove",
    description = "Notes that a part came off its hot end, and why.",
    footer = {
      "",
      "Examples:",
      "  meltkeeper part remove L-014 --because worn",
      "  meltkeeper part remove --printer heron --kind liner --because jam --at 14:20",
      "  meltkeeper part remove N-003 --because jam --not-this-part"
    })
final class PartRemoveCommand extends ChangeCommand {

  @Parameters(paramLabel = "ID", arity = "0..1", description = "The part; or name its place:")
  private Optional<String> id = Optional.empty();

  @Option(
      names = "--printer",
      paramLabel = "NAME",
      description = "The printer that it is on, instead of ID.")
  private Optional<String> printer = Optional.empty();

  @Option(
      names = "--hot-end",
      paramLabel = "N",
      defaultValue = "0",
      description = "Which of the printer's hot ends, the first being 0 (default).")
  private int hotEnd;

  @Option(
      names = "--kind",
      paramLabel = "KIND",
      description = "Its kind: a hot end holds one of a kind.")
  private Optional<String> kind = Optional.empty();

  @Mixin private BecauseOption because = new BecauseOption();
  @Mixin private AtOption at = new AtOption();

  PartRemoveCommand(OpenDesk.Opening opening) {
    super(opening);
  }

  @Override
  PartChange change(OpenDesk open) {
    return open.desk()
        .acts()
        .remove(
            new RemovePart(which(), because.because(), because.notThisPart, at.nanos(open)),
            open.nowNanos());
  }

  private RemovePart.Which which() {
    if (id.isPresent() && printer.isEmpty() && kind.isEmpty()) {
      return new RemovePart.Which.Id(id.get());
    }
    if (id.isEmpty() && printer.isPresent() && kind.isPresent()) {
      return new RemovePart.Which.HeldBy(printer.get(), hotEnd, kind.get());
    }
    throw misused("name the part by its ID, or by --printer and --kind together");
  }

  @Override
  List<String> cautions() {
    return Cautions.AT_A_SWAP;
  }
}
