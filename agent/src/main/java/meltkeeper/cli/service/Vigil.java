package meltkeeper.cli.service;

import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import java.util.function.Supplier;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Tells the service manager that the agent is ready, then, three times in each watchdog interval,
 * that its heart beats; when it does not, it is silent, and the manager starts the agent anew.
 */
public final class Vigil implements AutoCloseable {

  private static final Logger LOG = LoggerFactory.getLogger(Vigil.class);

  private final ServiceManager manager;
  private final Heartbeat heart;
  private final Supplier<String> status;
  private final ScheduledExecutorService thread =
      Executors.newSingleThreadScheduledExecutor(work -> new Thread(work, "vigil"));

  /**
   * A vigil that has not begun.
   *
   * @param status one line on how it goes
   */
  public Vigil(ServiceManager manager, Heartbeat heart, Supplier<String> status) {
    this.manager = manager;
    this.heart = heart;
    this.status = status;
  }

  /** Begins; the agent must be at work. */
  public void begin() {
    manager.ready(status.get());
    manager
        .watchdog()
        .ifPresent(
            interval -> {
              long nanos = interval.toNanos() / 3;
              Future<?> unused =
                  thread.scheduleWithFixedDelay(this::look, nanos, nanos, TimeUnit.NANOSECONDS);
            });
  }

  private void look() {
    try {
      if (heart.beats()) {
        manager.alive(status.get());
      } else {
        LOG.error("the writer or the page has stopped; the service manager is not told \"alive\"");
      }
    } catch (RuntimeException e) {
      LOG.error("a bug in Meltkeeper: no look at its own health", e);
    }
  }

  @Override
  public void close() {
    thread.shutdownNow();
    manager.stopping();
  }
}
