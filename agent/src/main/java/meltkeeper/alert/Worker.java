package meltkeeper.alert;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Semaphore;
import java.util.concurrent.TimeUnit;
import java.util.function.Supplier;
import meltkeeper.alert.Handover.Outcome;
import meltkeeper.alert.route.Message;
import meltkeeper.alert.route.Route;
import meltkeeper.alert.route.UndeliveredException;
import meltkeeper.protocol.Arrival;
import meltkeeper.store.Alert;
import meltkeeper.store.Delivery.State;
import meltkeeper.store.Letter;
import meltkeeper.store.Outbox;
import meltkeeper.store.StoreException;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * One route's thread: takes what waits for the route and tries until it is taken or given up.
 * Alerts of one topic and subject keep their order, so that an all-clear never overtakes.
 */
final class Worker implements AutoCloseable {

  private static final Logger LOG = LoggerFactory.getLogger(Worker.class);

  /** A longer mail would not be read. */
  private static final int MOST_JOINED = 30;

  /** A route that fails more often in one round is down: the others wait for the next. */
  private static final int MOST_FAILURES = 2;

  private static final Rules.Verdict SUPERSEDED =
      new Rules.Verdict(Rules.What.CANCEL, 0, "a later reminder waits");

  private static final long HANGING_CLOSE_MILLIS = 5_000;

  private final String name;
  private final Route route;
  private final Rules rules;
  private final Pace pace;
  private final Outbox outbox;
  private final Supplier<Arrival> clock;
  private final Count count = new Count();
  private final Direct direct = new Direct();
  private final Semaphore news = new Semaphore(0);
  private final Handover handover;
  private final Thread thread;
  private volatile boolean closed;

  Worker(String name, Route route, Rules rules, Pace pace, Outbox outbox, Supplier<Arrival> clock) {
    this.name = name;
    this.route = route;
    this.rules = rules;
    this.pace = pace;
    this.outbox = outbox;
    this.clock = clock;
    this.handover = new Handover(name, route, pace, outbox, clock, count);
    this.thread = new Thread(this::work, "route " + name);
    thread.setDaemon(true);
  }

  void start() {
    thread.start();
  }

  String name() {
    return name;
  }

  /** Notes what waits in the outbox. */
  void waits(int letters, boolean areAllThatMay) {
    count.waits(letters, areAllThatMay);
  }

  /** Notes that others gave letters up. */
  void died(int letters) {
    count.died(letters);
  }

  RouteState state() {
    return count.state(name);
  }

  /** Calls without the outbox, for when the store itself is the trouble. */
  void call(Alert alert) {
    direct.add(alert);
    news.release();
  }

  private void work() {
    while (!closed) {
      try {
        callDirectly();
        round();
        pause();
      } catch (StoreException e) {
        LOG.debug("route {}: {}", name, e.getMessage());
        pause();
      } catch (InterruptedException e) {
        LOG.debug("route {}: interrupted", name);
      } catch (RuntimeException e) {
        LOG.error("route {}: a bug in Meltkeeper", name, e);
        pause();
      }
    }
  }

  private void pause() {
    try {
      news.tryAcquire(pace.rest().toMillis(), TimeUnit.MILLISECONDS);
    } catch (InterruptedException e) {
      LOG.debug("route {}: interrupted", name);
    }
  }

  private long nowNanos() {
    return clock.get().steadyNanos();
  }

  private void callDirectly() throws InterruptedException {
    Optional<Alert> call = direct.due(nowNanos());
    while (call.isPresent() && !closed) {
      Optional<UndeliveredException> failure =
          handover.handedOver(List.of(new Message(call.get(), false)));
      if (failure.isEmpty()) {
        direct.done();
      } else {
        int failures = direct.failed();
        if (handover.isGivenUp(failure.get(), failures)) {
          count.died(1);
          direct.done();
        } else {
          direct.next(nowNanos() + handover.pauseNanos(failures));
        }
      }
      call = direct.due(nowNanos());
    }
  }

  private void round() throws InterruptedException {
    Round round = Round.of(outbox.waiting(name, Integer.MAX_VALUE));
    Set<String> held = new HashSet<>();
    List<Letter> together = new ArrayList<>();
    int failures = 0;
    for (Letter letter : round.letters()) {
      String order = letter.alert().topic().label() + " " + letter.alert().subject().written();
      if (closed || failures >= MOST_FAILURES) {
        return;
      }
      if (held.contains(order)) {
        continue;
      }
      Rules.Verdict verdict =
          round.isSuperseded(letter) ? SUPERSEDED : rules.judge(letter, clock.get());
      if (verdict.what() == Rules.What.TRY
          && handover.isJoined(letter)
          && together.size() < MOST_JOINED) {
        together.add(letter);
        continue;
      }
      Outcome outcome = carriedOut(verdict, letter);
      if (outcome != Outcome.GONE) {
        held.add(order);
      }
      failures += outcome == Outcome.FAILED ? 1 : 0;
    }
    if (!together.isEmpty()) {
      handover.tried(together);
    }
  }

  private Outcome carriedOut(Rules.Verdict verdict, Letter letter) throws InterruptedException {
    switch (verdict.what()) {
      case CANCEL -> {
        handover.note(letter, State.CANCELLED, nowNanos(), verdict.why());
        return Outcome.GONE;
      }
      case PUT_OFF -> {
        handover.note(letter, State.WAITING, verdict.untilNanos(), verdict.why());
        return Outcome.WAITS;
      }
      case WAIT -> {
        return Outcome.WAITS;
      }
      case TRY -> {
        return handover.tried(List.of(letter));
      }
    }
    throw new IllegalStateException("a bug in Meltkeeper: no verdict such as " + verdict);
  }

  /** Ends at once: what was not delivered waits in the outbox for the next start. */
  @Override
  public void close() {
    closed = true;
    thread.interrupt();
    try {
      thread.join(HANGING_CLOSE_MILLIS);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
    route.close();
  }
}
