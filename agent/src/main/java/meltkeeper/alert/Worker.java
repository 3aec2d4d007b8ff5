package meltkeeper.alert;

import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Semaphore;
import java.util.concurrent.TimeUnit;
import java.util.function.Supplier;
import java.util.random.RandomGenerator;
import meltkeeper.alert.route.Message;
import meltkeeper.alert.route.Route;
import meltkeeper.alert.route.UndeliveredException;
import meltkeeper.protocol.Arrival;
import meltkeeper.store.Alert;
import meltkeeper.store.Delivery;
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
  private static final int MOST = 200;

  /** A route that fails more often in one round is down: the others wait for the next. */
  private static final int MOST_FAILURES = 2;

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
  private final RandomGenerator random = RandomGenerator.getDefault();
  private final Thread thread;
  private volatile boolean closed;

  Worker(String name, Route route, Rules rules, Pace pace, Outbox outbox, Supplier<Arrival> clock) {
    this.name = name;
    this.route = route;
    this.rules = rules;
    this.pace = pace;
    this.outbox = outbox;
    this.clock = clock;
    this.thread = new Thread(this::work, "route " + name);
    thread.setDaemon(true);
  }

  void start() {
    thread.start();
  }

  String name() {
    return name;
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
      Optional<UndeliveredException> failure = tried(call.get());
      if (failure.isEmpty()) {
        direct.done();
      } else {
        int failures = direct.failed();
        if (failure.get().isFinal() || pace.isSpent(failures)) {
          count.died();
          direct.done();
        } else {
          direct.next(nowNanos() + pace.pauseNanos(failures, random));
        }
      }
      call = direct.due(nowNanos());
    }
  }

  private void round() throws InterruptedException {
    List<Letter> letters = outbox.waiting(name, MOST);
    count.waits(letters.size());
    Set<String> held = new HashSet<>();
    int failures = 0;
    for (Letter letter : letters) {
      String order = letter.alert().topic().label() + " " + letter.alert().subject().written();
      if (closed || failures >= MOST_FAILURES) {
        return;
      }
      if (held.contains(order)) {
        continue;
      }
      Rules.Verdict verdict = rules.judge(letter, clock.get());
      Outcome outcome = carriedOut(verdict, letter);
      if (outcome != Outcome.GONE) {
        held.add(order);
      }
      failures += outcome == Outcome.FAILED ? 1 : 0;
    }
  }

  private enum Outcome {
    GONE,
    WAITS,
    FAILED
  }

  private Outcome carriedOut(Rules.Verdict verdict, Letter letter) throws InterruptedException {
    switch (verdict.what()) {
      case CANCEL -> {
        outbox.note(changed(letter, State.CANCELLED, 0, nowNanos(), verdict.why()));
        return Outcome.GONE;
      }
      case PUT_OFF -> {
        outbox.note(changed(letter, State.WAITING, 0, verdict.untilNanos(), verdict.why()));
        return Outcome.WAITS;
      }
      case WAIT -> {
        return Outcome.WAITS;
      }
      case TRY -> {
        return tried(letter);
      }
    }
    throw new IllegalStateException("a bug in Meltkeeper: no verdict such as " + verdict);
  }

  private Outcome tried(Letter letter) throws InterruptedException {
    Optional<UndeliveredException> failure = tried(letter.alert());
    if (failure.isEmpty()) {
      outbox.note(changed(letter, State.DELIVERED, 1, nowNanos(), ""));
      return Outcome.GONE;
    }
    int attempts = letter.delivery().attempts() + 1;
    String reason = failure.get().reason();
    if (failure.get().isFinal() || pace.isSpent(attempts)) {
      String id = letter.alert().id();
      LOG.error("route {}: alert {} is given up, try {}: {}", name, id, attempts, reason);
      count.died();
      outbox.note(changed(letter, State.DEAD, 1, nowNanos(), reason));
      return Outcome.GONE;
    }
    long next = nowNanos() + pace.pauseNanos(attempts, random);
    outbox.note(changed(letter, State.WAITING, 1, next, reason));
    return Outcome.FAILED;
  }

  private static Delivery changed(
      Letter letter, State state, int moreAttempts, long nextNanos, String detail) {
    Delivery before = letter.delivery();
    return new Delivery(
        before.alertId(),
        before.route(),
        state,
        before.attempts() + moreAttempts,
        nextNanos,
        detail);
  }

  private Optional<UndeliveredException> tried(Alert alert) throws InterruptedException {
    try {
      route.deliver(new Message(alert, false));
      if (count.succeeded()) {
        LOG.info("route {}: works again", name);
      }
      return Optional.empty();
    } catch (UndeliveredException e) {
      return Optional.of(failed(e));
    } catch (RuntimeException e) {
      LOG.error("route {}: a bug in Meltkeeper", name, e);
      return Optional.of(failed(UndeliveredException.forNow("a bug: " + e)));
    }
  }

  private UndeliveredException failed(UndeliveredException failure) {
    if (count.failed(failure.reason())) {
      LOG.warn("route {}: {}; trying again", name, failure.reason());
    }
    return failure;
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
