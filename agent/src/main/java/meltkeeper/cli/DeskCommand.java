package meltkeeper.cli;

import java.io.PrintWriter;
import java.util.concurrent.Callable;
import meltkeeper.desk.RefusedException;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** A command that asks the shop's desk. */
abstract class DeskCommand implements Callable<Integer> {

  private final OpenDesk.Opening opening;

  @Mixin private ConfigFile config = new ConfigFile();
  @Spec private CommandSpec spec = CommandSpec.create();

  DeskCommand(OpenDesk.Opening opening) {
    this.opening = opening;
  }

  @Override
  public final Integer call() {
    try (OpenDesk open = opening.open(config)) {
      answer(open);
      return 0;
    } catch (RefusedException e) {
      throw new FaultsException(e.faults());
    }
  }

  /** Asks, and prints the answer. */
  abstract void answer(OpenDesk open);

  /** Wrong usage that the options alone do not tell. */
  final ParameterException misused(String allowed) {
    return new ParameterException(spec.commandLine(), allowed);
  }

  final PrintWriter out() {
    return spec.commandLine().getOut();
  }

  final PrintWriter err() {
    return spec.commandLine().getErr();
  }
}
