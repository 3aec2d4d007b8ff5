package meltkeeper.cli;

import java.io.IOException;
import java.nio.charset.CharacterCodingException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.List;
import meltkeeper.desk.AnswerJson;
import meltkeeper.desk.PaperAnswer;
import meltkeeper.protocol.Fault;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Takes in a past kept on paper. */
@Command(
    name = "import",
    description = {
      "Takes in a past kept on paper: a table with the columns id,kind,ended,temperature,hours,",
      "one row a part and temperature; ended is one of jam, worn, precaution, inspection,",
      "still-fitted. All of it, or nothing."
    },
    footer = {"", "Example: meltkeeper part import past.csv"})
final class PartImportCommand extends DeskCommand {

  @Parameters(paramLabel = "FILE.csv", description = "The table, in UTF-8.")
  private Path file = Path.of("");

  @Option(names = "--json", description = "Print one JSON object.")
  private boolean json;

  PartImportCommand(OpenDesk.Opening opening) {
    super(opening);
  }

  @Override
  void answer(OpenDesk open) {
    PaperAnswer answer = open.desk().paper().take(file.toString(), text(), open.nowNanos());
    if (json) {
      out().println(AnswerJson.print(answer));
      return;
    }
    out()
        .printf(
            "Taken in: parts %d, hot hours %s, failed %d, still fitted %d%n",
            answer.parts(),
            PartListCommand.tenths(answer.hotHours()),
            answer.failures(),
            answer.stillFitted());
    if (answer.stillFitted() > 0) {
      out().println("Tell where those still fitted are: meltkeeper part fit ID --printer NAME");
    }
  }

  private String text() {
    try {
      return Files.readString(file);
    } catch (NoSuchFileException e) {
      throw new FaultsException(List.of(Fault.of("FILE.csv", file, "a file that exists")));
    } catch (CharacterCodingException e) {
      throw new FaultsException(
          List.of(
              Fault.of(
                  "FILE.csv", file, "text in UTF-8", "save the table as CSV in UTF-8 once more")));
    } catch (IOException e) {
      throw new FailedException("cannot read " + file + ": " + e.getMessage());
    }
  }
}
