package meltkeeper.alert;

import java.time.Duration;
import java.util.List;
import java.util.Map;
import meltkeeper.store.Delivery;
import meltkeeper.store.Delivery.State;
import meltkeeper.store.Letter;
import meltkeeper.store.Outbox;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** Keeps the outbox within its bounds. For one thread. */
final class Caretaker {

  private static final Logger LOG = LoggerFactory.getLogger(Caretaker.class);
  private static final Duration PRUNE_EVERY = Duration.ofHours(1);

  /** Few enough that no commit of readings waits noticeably. */
  private static final int MOST_PRUNED = 200;

  private final OutboxLimits limits;
  private final Outbox outbox;
  private long pruneNanos = Long.MIN_VALUE;

  Caretaker(OutboxLimits limits, Outbox outbox) {
    this.limits = limits;
    this.outbox = outbox;
  }

  void look(long nowNanos, List<Worker> workers) {
    Map<String, Integer> waiting = outbox.waiting();
    for (Worker worker : workers) {
      int letters = waiting.getOrDefault(worker.name(), 0);
      worker.waits(letters, letters >= limits.mostWaiting());
      if (letters > limits.mostWaiting()) {
        giveUpTheExcess(worker);
      }
    }
    buryStrangers(waiting, workers);
    prune(nowNanos);
  }

  private void giveUpTheExcess(Worker worker) {
    List<Letter> excess =
        Overflow.of(outbox.waiting(worker.name(), Integer.MAX_VALUE), limits.mostWaiting());
    LOG.error(
        "route {}: more than {} alerts wait; {} are given up",
        worker.name(),
        limits.mostWaiting(),
        excess.size());
    bury(excess, "the outbox was full: more than " + limits.mostWaiting() + " alerts waited");
    worker.died(excess.size());
  }

  /** What waits for a route that the configuration names no more would wait for ever. */
  private void buryStrangers(Map<String, Integer> waiting, List<Worker> workers) {
    List<String> known = workers.stream().map(Worker::name).toList();
    waiting.keySet().stream()
        .filter(route -> !known.contains(route))
        .forEach(
            route ->
                bury(
                    outbox.waiting(route, Integer.MAX_VALUE),
                    "the configuration names no such route any more"));
  }

  private void bury(List<Letter> letters, String why) {
    outbox.note(
        letters.stream()
            .map(Letter::delivery)
            .map(
                waits ->
                    new Delivery(
                        waits.alertId(),
                        waits.route(),
                        State.DEAD,
                        waits.attempts(),
                        waits.nextNanos(),
                        why))
            .toList());
  }

  private void prune(long nowNanos) {
    if (nowNanos < pruneNanos) {
      return;
    }
    int gone = outbox.prune(nowNanos - limits.keep().toNanos(), MOST_PRUNED);
    pruneNanos = gone < MOST_PRUNED ? nowNanos + PRUNE_EVERY.toNanos() : nowNanos;
    if (gone > 0) {
      LOG.debug("{} old episodes are forgotten", gone);
    }
  }
}
