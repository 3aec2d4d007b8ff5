package meltkeeper.cli.manual;

import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Prints the manual page of the command that it belongs to, with all its subcommands. */
@Command(
    name = "generate-manual",
    description = "Prints the manual page for man(1), made of the command definitions.",
    footer = {"", "Read it:  meltkeeper generate-manual | man -l -"})
public final class ManualCommand implements Callable<Integer> {

  @Option(
      names = "--of-version",
      paramLabel = "VERSION",
      description = "The version that the page's foot names; none if not given.")
  private String version = "";

  @Spec private CommandSpec spec = CommandSpec.create();

  @Override
  public Integer call() {
    String page = ManualPage.of(spec.root(), version);
    spec.commandLine().getOut().print(page);
    spec.commandLine().getOut().flush();
    return 0;
  }
}
