package meltkeeper.alert;

import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import java.util.random.RandomGenerator;
import java.util.stream.Collectors;
import meltkeeper.alert.route.Message;
import meltkeeper.alert.route.Route;
import meltkeeper.alert.route.UndeliveredException;
import meltkeeper.protocol.Arrival;
import meltkeeper.store.Delivery;
import meltkeeper.store.Delivery.State;
import meltkeeper.store.Letter;
import meltkeeper.store.Outbox;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** Tries a route, and notes how it went. For the route's thread. */
final class Handover {

  private static final Logger LOG = LoggerFactory.getLogger(Handover.class);

  private final String name;
  private final Route route;
  private final Pace pace;
  private final Outbox outbox;
  private final Supplier<Arrival> clock;
  private final Count count;
  private final RandomGenerator random = RandomGenerator.getDefault();

  /** What became of a letter. */
  enum Outcome {
    GONE,
    WAITS,
    FAILED
  }

  Handover(
      String name, Route route, Pace pace, Outbox outbox, Supplier<Arrival> clock, Count count) {
    this.name = name;
    this.route = route;
    this.pace = pace;
    this.outbox = outbox;
    this.clock = clock;
    this.count = count;
  }

  /** True for a letter that the route takes together with others; what presses goes alone. */
  boolean isJoined(Letter letter) {
    return route.joins() && !letter.alert().topic().isPressing();
  }

  /** Tries letters as one message; they fail as one, too. */
  Outcome tried(List<Letter> letters) throws InterruptedException {
    Optional<UndeliveredException> failure =
        handedOver(letters.stream().map(letter -> new Message(letter.alert(), false)).toList());
    if (failure.isEmpty()) {
      noteTry(letters, State.DELIVERED, nowNanos(), "");
      return Outcome.GONE;
    }
    int attempts = letters.stream().mapToInt(l -> l.delivery().attempts()).max().orElse(0) + 1;
    String reason = failure.get().reason();
    if (isGivenUp(failure.get(), attempts)) {
      String ids = letters.stream().map(l -> l.alert().id()).collect(Collectors.joining(", "));
      LOG.error("route {}: alert {} is given up, try {}: {}", name, ids, attempts, reason);
      count.died(letters.size());
      noteTry(letters, State.DEAD, nowNanos(), reason);
      return Outcome.GONE;
    }
    noteTry(letters, State.WAITING, nowNanos() + pauseNanos(attempts), reason);
    return Outcome.FAILED;
  }

  /** Notes what was decided without a try. */
  void note(Letter letter, State state, long nextNanos, String why) {
    outbox.note(changed(letter, state, 0, nextNanos, why));
  }

  /** Hands messages over without noting it in the outbox; gives the failure, if it is one. */
  Optional<UndeliveredException> handedOver(List<Message> messages) throws InterruptedException {
    try {
      route.deliver(messages);
      if (count.succeeded(messages.size())) {
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

  boolean isGivenUp(UndeliveredException failure, int attempts) {
    return failure.isFinal() || pace.isSpent(attempts);
  }

  long pauseNanos(int attempts) {
    return pace.pauseNanos(attempts, random);
  }

  private long nowNanos() {
    return clock.get().steadyNanos();
  }

  private void noteTry(List<Letter> letters, State state, long nextNanos, String detail) {
    outbox.note(
        letters.stream().map(letter -> changed(letter, state, 1, nextNanos, detail)).toList());
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

  private UndeliveredException failed(UndeliveredException failure) {
    if (count.failed(failure.reason())) {
      LOG.warn("route {}: {}; trying again", name, failure.reason());
    }
    return failure;
  }
}
