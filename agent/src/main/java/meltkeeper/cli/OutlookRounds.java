package meltkeeper.cli;

import java.time.Duration;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import java.util.function.LongSupplier;
import meltkeeper.outlook.OutlookDesk;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Keeps the outlook fresh on a thread of its own, and calls for what is due, so that neither a
 * reading nor a scrape ever waits for a model to be fitted.
 */
final class OutlookRounds implements AutoCloseable {

  private static final Logger LOG = LoggerFactory.getLogger(OutlookRounds.class);
  private static final Duration EVERY = Duration.ofSeconds(5);
  private static final Duration PATIENCE = Duration.ofSeconds(30);

  private final OutlookDesk desk;
  private final DueCalls calls;
  private final LongSupplier nowNanos;
  private final ScheduledExecutorService thread =
      Executors.newSingleThreadScheduledExecutor(
          task -> {
            Thread made = new Thread(task, "outlook");
            made.setDaemon(true);
            return made;
          });
  private boolean troubled;

  /** Begins at once. */
  OutlookRounds(OutlookDesk desk, DueCalls calls, LongSupplier nowNanos) {
    this.desk = desk;
    this.calls = calls;
    this.nowNanos = nowNanos;
    var unused =
        thread.scheduleWithFixedDelay(this::round, 0, EVERY.toMillis(), TimeUnit.MILLISECONDS);
  }

  private void round() {
    try {
      desk.refresh(nowNanos.getAsLong());
      calls.look(DueCalls.Ahead.of(desk.latest()), nowNanos.getAsLong());
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
