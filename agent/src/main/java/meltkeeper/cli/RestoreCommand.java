package meltkeeper.cli;

import java.nio.file.Path;
import java.time.Instant;
import java.util.concurrent.Callable;
import meltkeeper.config.Settings;
import meltkeeper.store.Store;
import meltkeeper.store.sql.Copies;
import meltkeeper.store.sql.Stores;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** A copy put in the store's place. */
@Command(
    name = "restore",
    description = {
      "Puts a copy in the store's place, once the agent is stopped.",
      "What was there is kept beside it."
    })
final class RestoreCommand implements Callable<Integer> {

  @Mixin private ConfigFile config = new ConfigFile();

  @Parameters(paramLabel = "FILE", description = "A copy that backup or the agent made.")
  private Path file = Path.of("");

  @Spec private CommandSpec spec = CommandSpec.create();

  @Override
  public Integer call() {
    Settings settings = config.settings();
    var kept = Copies.restore(settings.storeUrl(), file, Instant.now());
    try (Store store = Stores.open(settings.storeUrl())) {
      spec.commandLine()
          .getOut()
          .printf(
              "%s holds what %s held: %d parts, %d hot ends%n",
              settings.storeFile(), file, store.parts().size(), store.accounts().size());
    }
    kept.ifPresent(
        path -> spec.commandLine().getOut().printf("what was there before is kept: %s%n", path));
    return 0;
  }
}
