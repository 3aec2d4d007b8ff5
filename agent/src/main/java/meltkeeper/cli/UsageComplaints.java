package meltkeeper.cli;

import picocli.CommandLine.IParameterExceptionHandler;
import picocli.CommandLine.ParameterException;

/** Tells a wrong usage in one line with the nearest right one, and where to read more. */
final class UsageComplaints implements IParameterExceptionHandler {

  private final IParameterExceptionHandler standard;

  UsageComplaints(IParameterExceptionHandler standard) {
    this.standard = standard;
  }

  @Override
  public int handleParseException(ParameterException cause, String[] args) throws Exception {
    if (cause instanceof picocli.CommandLine.UnmatchedArgumentException) {
      return standard.handleParseException(cause, args);
    }
    cause.getCommandLine().getErr().println("meltkeeper: " + cause.getMessage());
    cause
        .getCommandLine()
        .getErr()
        .println("try: " + cause.getCommandLine().getCommandSpec().qualifiedName() + " --help");
    return Complaints.BAD_USAGE;
  }
}
