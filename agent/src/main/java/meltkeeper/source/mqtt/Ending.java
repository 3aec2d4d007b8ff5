package meltkeeper.source.mqtt;

import java.time.Duration;
import java.util.concurrent.locks.LockSupport;
import java.util.function.BooleanSupplier;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Ends a client of the library with all its threads, whatever it is doing. The library refuses to
 * be closed while it connects, and closed while it disconnects it leaves threads behind; so it is
 * asked politely first, then freed by closing its socket, closed when it has come to rest, and its
 * writing thread woken if it missed that.
 */
final class Ending {

  private static final Logger LOG = LoggerFactory.getLogger(Ending.class);
  private static final Duration POLITENESS = Duration.ofSeconds(2);
  private static final Duration PATIENCE = Duration.ofSeconds(5);
  private static final Duration LOOK_AGAIN = Duration.ofMillis(10);

  private Ending() {}

  /** A call of the library that may fail with an exception of its own. */
  interface Step {
    void run() throws Exception;
  }

  /**
   * @param goodbye tells the broker; the library answers {@code ended} when it has come to rest
   */
  static void of(
      Link.Order order, boolean connected, Step goodbye, PendingAnswer ended, Step close) {
    order.delivery().retire();
    if (connected && succeeds(goodbye)) {
      until(ended::isDone, POLITENESS);
      order.sockets().close();
      until(ended::isDone, PATIENCE);
    } else {
      order.sockets().close();
    }
    if (!until(() -> succeeds(close), PATIENCE) || !until(order.sockets()::isAtRest, PATIENCE)) {
      LOG.warn("{}: a connection did not end in {}", order.uri(), PATIENCE);
    }
  }

  private static boolean succeeds(Step step) {
    try {
      step.run();
      return true;
    } catch (Exception e) {
      LOG.trace("not yet", e);
      return false;
    }
  }

  /** Not cut short by an interrupt: what is left open now stays open for months. */
  private static boolean until(BooleanSupplier condition, Duration limit) {
    boolean interrupted = Thread.interrupted();
    long begin = System.nanoTime();
    boolean met = condition.getAsBoolean();
    while (!met && System.nanoTime() - begin < limit.toNanos()) {
      LockSupport.parkNanos(LOOK_AGAIN.toNanos());
      interrupted |= Thread.interrupted();
      met = condition.getAsBoolean();
    }
    if (interrupted) {
      Thread.currentThread().interrupt();
    }
    return met;
  }
}
