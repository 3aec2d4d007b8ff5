package meltkeeper.alert;

import java.time.Duration;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.function.Supplier;
import meltkeeper.alert.route.JamAction;
import meltkeeper.alert.route.Publishing;
import meltkeeper.alert.route.RouteSettings;
import meltkeeper.alert.route.Routes;
import meltkeeper.alert.route.Sending;
import meltkeeper.alert.route.Words;
import meltkeeper.protocol.Arrival;
import meltkeeper.store.Outbox;
import meltkeeper.store.StoreException;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** All routes at work, reminders, and the call for a store in trouble. */
public final class Dispatch implements AutoCloseable {

  private static final Logger LOG = LoggerFactory.getLogger(Dispatch.class);
  private static final Duration LOOK_EVERY = Duration.ofSeconds(5);

  private final AlertSettings settings;
  private final Outbox outbox;
  private final Supplier<Arrival> clock;
  private final List<Worker> workers;
  private final Reminders reminders;
  private final StoreWatch storeWatch;
  private final Caretaker caretaker;
  private final CountDownLatch closing = new CountDownLatch(1);
  private final Thread clerk;

  /**
   * Starts everything.
   *
   * @param publishing makes connections to brokers
   * @param sending to printers on a line of their own
   * @param clock of arrivals
   * @param storeTrouble why the store takes no commits; empty while it does
   */
  public Dispatch(
      AlertSettings settings,
      ZoneId zone,
      Publishing.Maker publishing,
      Sending sending,
      Outbox outbox,
      Supplier<Arrival> clock,
      Supplier<Optional<String>> storeTrouble) {
    this(
        settings,
        new Routes(new Words(zone), settings.remind(), publishing, sending),
        Pace.usual(settings.attempts()),
        outbox,
        clock,
        storeTrouble);
  }

  Dispatch(
      AlertSettings settings,
      Routes routes,
      Pace pace,
      Outbox outbox,
      Supplier<Arrival> clock,
      Supplier<Optional<String>> storeTrouble) {
    this.settings = settings;
    this.outbox = outbox;
    this.clock = clock;
    this.workers = workers(routes, pace);
    this.reminders = new Reminders(settings.remind(), settings::tellers, routes.words(), outbox);
    this.storeWatch = new StoreWatch(settings, storeTrouble, outbox);
    this.caretaker = new Caretaker(settings.outbox(), outbox);
    this.clerk = new Thread(this::keepLooking, "alerts");
    clerk.setDaemon(true);
    workers.forEach(Worker::start);
    if (!workers.isEmpty()) {
      clerk.start();
    }
  }

  private void keepLooking() {
    try {
      do {
        look();
      } while (!closing.await(LOOK_EVERY.toMillis(), TimeUnit.MILLISECONDS));
    } catch (InterruptedException e) {
      LOG.debug("alerts: interrupted");
    }
  }

  private List<Worker> workers(Routes routes, Pace pace) {
    List<Worker> made = new ArrayList<>();
    for (RouteSettings route : settings.routes()) {
      made.add(
          new Worker(
              route.name(),
              routes.of(route),
              new Rules(route.quiet(), Optional.empty()),
              pace,
              outbox,
              clock));
    }
    settings
        .action()
        .ifPresent(
            action ->
                made.add(
                    new Worker(
                        JamAction.NAME,
                        routes.of(action),
                        Rules.of(action, routes.sending()),
                        pace,
                        outbox,
                        clock)));
    return List.copyOf(made);
  }

  /** How each route stands. */
  public List<RouteState> states() {
    return workers.stream().map(Worker::state).toList();
  }

  private void look() {
    try {
      long now = clock.get().steadyNanos();
      storeWatch.look(now, workers);
      reminders.post(now);
      caretaker.look(now, workers);
    } catch (StoreException e) {
      LOG.debug("alerts: {}", e.getMessage());
    } catch (RuntimeException e) {
      LOG.error("alerts: a bug in Meltkeeper", e);
    }
  }

  @Override
  public void close() {
    closing.countDown();
    workers.forEach(Worker::close);
  }
}
