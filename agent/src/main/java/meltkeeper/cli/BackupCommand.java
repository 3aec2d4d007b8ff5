package meltkeeper.cli;

import java.nio.file.Path;
import java.util.concurrent.Callable;
import meltkeeper.store.sql.Copies;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** A copy of the store. */
@Command(
    name = "backup",
    description = {
      "Writes a copy of the store to a new file, whether or not the agent is running.",
      "The agent makes one each day by itself: see backup in the configuration."
    })
final class BackupCommand implements Callable<Integer> {

  @Mixin private ConfigFile config = new ConfigFile();

  @Parameters(paramLabel = "FILE", description = "A new file.")
  private Path file = Path.of("");

  @Spec private CommandSpec spec = CommandSpec.create();

  @Override
  public Integer call() {
    Copies.copy(config.settings().storeUrl(), file);
    spec.commandLine().getOut().printf("%s is a whole and sound copy of the store%n", file);
    return 0;
  }
}
