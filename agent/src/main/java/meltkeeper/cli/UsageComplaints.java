package meltkeeper.cli;

import java.io.PrintWriter;
import java.util.List;
import meltkeeper.protocol.Nearest;
import picocli.CommandLine;
import picocli.CommandLine.IParameterExceptionHandler;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.UnmatchedArgumentException;

/** Tells a wrong usage in words, with the nearest right one, and where to read more. */
final class UsageComplaints implements IParameterExceptionHandler {

  @Override
  public int handleParseException(ParameterException cause, String[] args) {
    CommandLine command = cause.getCommandLine();
    PrintWriter err = command.getErr();
    err.println("meltkeeper: " + cause.getMessage());
    if (cause instanceof UnmatchedArgumentException unmatched) {
      nearest(unmatched.getUnmatched(), command)
          .forEach(name -> err.println("did you mean " + name + "?"));
    }
    err.println("try: " + command.getCommandSpec().qualifiedName() + " --help");
    return Complaints.BAD_USAGE;
  }

  /** Among the options when it looks like one, else among the commands. */
  private static List<String> nearest(List<String> unmatched, CommandLine command) {
    String first = unmatched.get(0);
    List<String> names =
        first.startsWith("-")
            ? command.getCommandSpec().options().stream()
                .map(option -> option.longestName())
                .toList()
            : List.copyOf(command.getSubcommands().keySet());
    return Nearest.to(first, names).stream().toList();
  }
}
