package meltkeeper.cli;

import java.time.Instant;
import java.util.List;
import meltkeeper.desk.AnswerJson;
import meltkeeper.desk.PartChange;
import meltkeeper.desk.SharedEdge;
import meltkeeper.part.Moments;
import picocli.CommandLine.Option;

/** A command that changes a part and tells what it did. */
abstract class ChangeCommand extends DeskCommand {

  @Option(names = "--json", description = "Print one JSON object.")
  private boolean json;

  ChangeCommand(OpenDesk.Opening opening) {
    super(opening);
  }

  /** Does it. */
  abstract PartChange change(OpenDesk open);

  /** What to mind while doing it. */
  List<String> cautions() {
    return List.of();
  }

  @Override
  final void answer(OpenDesk open) {
    PartChange change = change(open);
    if (json) {
      out().println(AnswerJson.print(change));
      cautions().forEach(err()::println);
      return;
    }
    out().println(change.done() + ".");
    change.shared().forEach(edge -> out().println(inProportion(edge, open)));
    change.notes().forEach(note -> out().println("Note: " + note + "."));
    cautions().forEach(out()::println);
  }

  private static String inProportion(SharedEdge edge, OpenDesk open) {
    return "Hours from "
        + words(edge.from(), open)
        + " to "
        + words(edge.until(), open)
        + " are kept as one sum and are shared in proportion to time,"
        + " unless a running agent still knows the readings: part show tells.";
  }

  private static String words(Instant at, OpenDesk open) {
    return Moments.words(Moments.nanos(at), open.shop().zone());
  }
}
