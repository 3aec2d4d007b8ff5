package meltkeeper.cli;

import meltkeeper.protocol.Fault;
import meltkeeper.store.StoreException;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import picocli.CommandLine;
import picocli.CommandLine.IExecutionExceptionHandler;
import picocli.CommandLine.ParseResult;

/** Tells what went wrong in words, and gives the exit code that is promised for it. */
final class Complaints implements IExecutionExceptionHandler {

  private static final Logger LOG = LoggerFactory.getLogger(Complaints.class);

  static final int FAILED = 1;
  static final int BAD_USAGE = 2;

  @Override
  public int handleExecutionException(Exception cause, CommandLine command, ParseResult parsed) {
    if (cause instanceof FaultsException faults) {
      for (Fault fault : faults.faults()) {
        command.getErr().println(fault);
      }
      return BAD_USAGE;
    }
    if (cause instanceof StoreException || cause instanceof FailedException) {
      command.getErr().println("meltkeeper: " + cause.getMessage());
      return FAILED;
    }
    LOG.error("a bug in Meltkeeper", cause);
    command
        .getErr()
        .println("meltkeeper: this is a bug in Meltkeeper; please report the log above");
    return FAILED;
  }
}
