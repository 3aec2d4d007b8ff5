package meltkeeper.cli;

import java.util.Optional;
import meltkeeper.cli.outlook.LifeText;
import meltkeeper.desk.AnswerJson;
import meltkeeper.outlook.LifeAnswer;
import meltkeeper.outlook.LifeQuestion;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** How long parts last, and when to replace them. */
@Command(
    name = "life",
    description = {
      "What the shop's own swaps and jams say: how long parts last, when a swap is cheapest,",
      "when each fitted part is due, how many spares to keep, whether cleaning pays."
    },
    footer = {
      "",
      "Examples:",
      "  meltkeeper life",
      "  meltkeeper life --kind liner --explain",
      "  meltkeeper life --spares-for 90d --sure 99%"
    })
final class LifeCommand extends DeskCommand {

  @Option(names = "--kind", paramLabel = "KIND", description = "Only that kind of part.")
  private Optional<String> kind = Optional.empty();

  @Option(
      names = "--explain",
      description = "With the model, the data behind it, and whether past failures fit it.")
  private boolean explain;

  @Option(
      names = "--spares-for",
      paramLabel = "DAYS",
      defaultValue = "60d",
      description = "How far ahead spares shall do: 60d by default.")
  private String sparesFor = "60d";

  @Option(
      names = "--sure",
      paramLabel = "SHARE",
      defaultValue = "95%",
      description = "How sure they shall do: 95%% by default.")
  private String sure = "95%";

  @Option(names = "--json", description = "Print one JSON object.")
  private boolean json;

  LifeCommand(OpenDesk.Opening opening) {
    super(opening);
  }

  @Override
  void answer(OpenDesk open) {
    LifeQuestion question =
        new LifeQuestion(
            kind,
            ShareOption.days("--spares-for", sparesFor),
            ShareOption.share("--sure", sure),
            explain);
    LifeAnswer answer = open.outlook().life(question, open.nowNanos());
    if (json) {
      out().println(AnswerJson.print(answer));
    } else {
      LifeText.print(answer, out());
    }
    out().flush();
  }
}
