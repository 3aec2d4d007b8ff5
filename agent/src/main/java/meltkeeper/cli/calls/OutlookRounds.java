package meltkeeper.cli.calls;

import java.time.Duration;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import java.util.function.Supplier;
import meltkeeper.outlook.OutlookDesk;
import meltkeeper.protocol.Arrival;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Keeps the outlook fresh on a thread of its own, and calls for what it shows, so that neither a
 * reading nor a scrape ever waits for a model to be fitted.
 */
public final class OutlookRounds implements AutoCloseable {

  private static final Logger LOG = LoggerFactory.getLogger(OutlookRounds.class);
  private static final Duration EVERY = Duration.ofSeconds(5);
  private static final Duration PATIENCE = Duration.ofSeconds(30);

  private final OutlookDesk desk;
  private final OutlookCalls calls;
  private final Supplier<Arrival> clock;
  private final ScheduledExecutorService thread =
      Executors.newSingleThreadScheduledExecutor(
          task -> {
            Thread made = new Thread(task, "outlook");
            made.setDaemon(true);
            return made;
          });
  private boolean troubled;

  /** Begins at once. */
  public OutlookRounds(OutlookDesk desk, OutlookCalls calls, Supplier<Arrival> clock) {
    this.desk = desk;
    this.calls = calls;
    this.clock = clock;
    var unused =
        thread.scheduleWithFixedDelay(this::round, 0, EVERY.toMillis(), TimeUnit.MILLISECONDS);
  }

  private void round() {
    try {
      desk.refresh(clock.get().wallNanos());
      calls.look(clock.get());
      troubled = false;
    } catch (RuntimeException e) {
      if (!troubled) {
        LOG.warn("the outlook stays as it was: {}", e.getMessage(), e);
      }
      troubled = true;
    }
  }

  @Override
  public void close() {
    thread.shutdownNow();
    try {
      if (!thread.awaitTermination(PATIENCE.toMillis(), TimeUnit.MILLISECONDS)) {
        LOG.warn("the outlook did not end within {}", PATIENCE);
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }
}
