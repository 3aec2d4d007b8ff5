package meltkeeper.cli;

import java.net.URI;
import java.time.Duration;
import java.time.LocalDate;
import java.util.concurrent.Callable;
import java.util.concurrent.CountDownLatch;
import meltkeeper.cli.copies.DailyCopies;
import meltkeeper.cli.service.Heartbeat;
import meltkeeper.cli.service.ServiceManager;
import meltkeeper.cli.service.Vigil;
import meltkeeper.config.Settings;
import meltkeeper.store.Store;
import meltkeeper.store.sql.Copies;
import meltkeeper.store.sql.Stores;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

/** The agent. */
@Command(
    name = "run",
    description = "Listens to the printers and credits their parts until it is stopped.",
    footer = {
      "",
      "Printers left alone are a fire risk: the agent is no safety device and replaces no",
      "smoke detector, thermal protection, fire code or electrician."
    })
final class RunCommand implements Callable<Integer> {

  private static final Logger LOG = LoggerFactory.getLogger(RunCommand.class);

  private static final Duration LOOK_FOR_COPY = Duration.ofMinutes(10);

  @Mixin private ConfigFile config = new ConfigFile();

  @Override
  public Integer call() throws InterruptedException {
    Settings settings = config.settings();
    CountDownLatch stopped = new CountDownLatch(1);
    CountDownLatch closed = new CountDownLatch(1);
    StopSignal.arrange(stopped, closed);
    try (Store store = Stores.open(settings.storeUrl());
        Agent agent = new Agent(settings, store, Agent.clockFor(store), Agent.USUAL_COMMIT);
        DailyCopies copies = copies(settings);
        Vigil vigil = vigil(agent, page(settings, agent))) {
      LOG.info("page on {}", page(settings, agent));
      copies.begin(LOOK_FOR_COPY);
      vigil.begin();
      stopped.await();
    } finally {
      closed.countDown();
    }
    return 0;
  }

  private static DailyCopies copies(Settings settings) {
    return new DailyCopies(
        settings.storeFile(),
        settings.copies(),
        file -> Copies.copy(settings.storeUrl(), file),
        () -> LocalDate.now(settings.zone()));
  }

  private static URI page(Settings settings, Agent agent) {
    return URI.create(
        "%s://%s:%d/".formatted(settings.web().scheme(), settings.web().inAddress(), agent.port()));
  }

  private static Vigil vigil(Agent agent, URI page) {
    return new Vigil(
        ServiceManager.of(System.getenv()),
        new Heartbeat(agent::live, page.resolve("/healthz")),
        agent::standing);
  }
}
