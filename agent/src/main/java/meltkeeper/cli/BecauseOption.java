package meltkeeper.cli;

import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import meltkeeper.part.Because;
import meltkeeper.protocol.Fault;
import meltkeeper.protocol.Nearest;
import picocli.CommandLine.Option;

/** The options that tell why a part came off. */
class BecauseOption {

  private static final List<String> WORDS =
      Arrays.stream(Because.values()).map(Because::word).toList();

  @Option(
      names = "--because",
      required = true,
      paramLabel = "REASON",
      description = "Why it came off: jam, worn, precaution or inspection.")
  private String word = "";

  @Option(
      names = "--not-this-part",
      description = "The trouble came from elsewhere: wet filament, a tangle, grit.")
  boolean notThisPart;

  /**
   * The reason.
   *
   * @throws FaultsException for another word
   */
  Because because() {
    return Because.ofWord(word)
        .orElseThrow(
            () ->
                new FaultsException(
                    List.of(
                        Fault.of(
                            "--because",
                            word,
                            WORDS.stream().collect(Collectors.joining(", ", "one of ", "")),
                            Nearest.to(word, WORDS)
                                .map(near -> "did you mean " + near + "?")
                                .orElse("")))));
  }
}
