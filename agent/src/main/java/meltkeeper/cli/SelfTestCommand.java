package meltkeeper.cli;

import java.io.IOException;
import java.net.HttpURLConnection;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Comparator;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.stream.Stream;
import meltkeeper.config.ConfigReader;
import meltkeeper.config.Settings;
import meltkeeper.store.Store;
import meltkeeper.store.sql.Stores;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** An agent in small, from the first step to the last. */
@Command(
    name = "self-test",
    description = {
      "Starts an agent on a throwaway store, asks its page and its metrics, and ends it:",
      "tells whether this computer can run it. It listens to nobody and touches no real store."
    })
final class SelfTestCommand implements Callable<Integer> {

  /** Nobody answers there: what connecting takes is tried, and nothing is heard. */
  private static final String CONFIGURATION =
      """
      store: jdbc:sqlite:self-test.db
      http: { listen: 127.0.0.1:0 }
      brokers:
        nobody: { url: tcp://127.0.0.1:1, protocol: 5 }
      mappings:
        status:
          - topic: self-test/{printer}
            read: { hot-end-temperature: /now }
      printers:
        robin: { from: { broker: nobody, mapping: status } }
      """;

  private static final List<String> PATHS = List.of("", "metrics", "healthz", "api/v1/printers");

  @Spec private CommandSpec spec = CommandSpec.create();

  @Override
  public Integer call() throws IOException {
    Path folder = Files.createTempDirectory("meltkeeper-self-test");
    try {
      attempt(folder);
    } finally {
      delete(folder);
    }
    spec.commandLine().getOut().println("An agent started, answered and ended: all is well.");
    return 0;
  }

  private void attempt(Path folder) throws IOException {
    Settings settings =
        ConfigReader.read(folder.resolve("meltkeeper.yaml").toString(), CONFIGURATION)
            .fold(
                valid -> valid,
                faults -> {
                  throw new FaultsException(faults);
                });
    try (Store store = Stores.open(settings.storeUrl());
        Agent agent = new Agent(settings, store, Agent.clockFor(store), Duration.ofSeconds(1))) {
      for (String path : PATHS) {
        ask(URI.create("http://127.0.0.1:" + agent.port() + "/" + path));
      }
    }
  }

  private static void ask(URI uri) throws IOException {
    HttpURLConnection connection = (HttpURLConnection) uri.toURL().openConnection();
    int code = connection.getResponseCode();
    connection.disconnect();
    if (code != HttpURLConnection.HTTP_OK) {
      throw new FailedException(uri.getPath() + " answered " + code + "; allowed: 200");
    }
  }

  private static void delete(Path folder) throws IOException {
    try (Stream<Path> all = Files.walk(folder)) {
      for (Path path : all.sorted(Comparator.reverseOrder()).toList()) {
        Files.delete(path);
      }
    }
  }
}
