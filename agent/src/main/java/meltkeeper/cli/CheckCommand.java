package meltkeeper.cli;

import java.util.concurrent.Callable;
import meltkeeper.config.Settings;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** Validates a configuration. */
@Command(
    name = "check",
    description = "Validates the configuration and lists every fault at once; exit code 2 then.")
final class CheckCommand implements Callable<Integer> {

  @Mixin private ConfigFile config = new ConfigFile();
  @Spec private CommandSpec spec = CommandSpec.create();

  @Override
  public Integer call() {
    Settings settings = config.settings();
    spec.commandLine()
        .getOut()
        .printf(
            "%s is valid: %d brokers, %d mappings, %d printers, %d kinds of part%n",
            config.path(),
            settings.brokers().size(),
            settings.mappings().size(),
            settings.printers().size(),
            settings.kinds().size());
    return 0;
  }
}
