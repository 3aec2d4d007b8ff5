package meltkeeper.cli;

import picocli.CommandLine.Option;

/** The options that name a hot end. */
final class PlaceOption {

  @Option(
      names = "--printer",
      required = true,
      paramLabel = "NAME",
      description = "The printer, as the configuration calls it.")
  String printer = "";

  @Option(
      names = "--hot-end",
      paramLabel = "N",
      defaultValue = "0",
      description = "Which of its hot ends, the first being 0 (default).")
  int hotEnd;
}
