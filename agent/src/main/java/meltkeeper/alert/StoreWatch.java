package meltkeeper.alert;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import meltkeeper.store.Alert;
import meltkeeper.store.AlertTopic;
import meltkeeper.store.Episode;
import meltkeeper.store.Outbox;
import meltkeeper.store.Posting;
import meltkeeper.store.Subject;

/**
 * Calls when the store takes no commits. Such a call cannot wait in the outbox: it is made at once,
 * and kept as history when the store is well again. For one thread.
 */
final class StoreWatch {

  /** A disk may be slow for a moment. */
  static final Duration PATIENCE = Duration.ofMinutes(1);

  private final AlertSettings settings;
  private final Supplier<Optional<String>> trouble;
  private final Outbox outbox;
  private Optional<Long> sinceNanos = Optional.empty();
  private Optional<Alert> called = Optional.empty();

  StoreWatch(AlertSettings settings, Supplier<Optional<String>> trouble, Outbox outbox) {
    this.settings = settings;
    this.trouble = trouble;
    this.outbox = outbox;
  }

  void look(long nowNanos, List<Worker> workers) {
    Optional<String> now = trouble.get();
    if (now.isEmpty()) {
      sinceNanos = Optional.empty();
      called.ifPresent(began -> clear(began, nowNanos, workers));
      called = Optional.empty();
      return;
    }
    long since = sinceNanos.orElse(nowNanos);
    sinceNanos = Optional.of(since);
    if (called.isEmpty() && nowNanos - since >= PATIENCE.toNanos()) {
      Episode episode = new Episode(AlertTopic.STORE_TROUBLE, new Subject.OfAgent(), since);
      String text =
          now.get()
              + ". Hours are kept in memory until it works again; a power cut now would lose them.";
      Alert began = new Alert(episode, Alert.Phase.BEGAN, 0, nowNanos, text);
      called = Optional.of(began);
      call(began, workers);
    }
  }

  private void clear(Alert began, long nowNanos, List<Worker> workers) {
    Alert over =
        new Alert(
            began.episode(),
            Alert.Phase.ALL_CLEAR,
            0,
            nowNanos,
            "The store works again; nothing was lost.");
    call(over, workers);
    outbox.post(List.of(new Posting(began, List.of()), new Posting(over, List.of())));
  }

  private void call(Alert alert, List<Worker> workers) {
    List<String> wanted = settings.tellers(AlertTopic.STORE_TROUBLE);
    workers.stream()
        .filter(worker -> wanted.contains(worker.name()))
        .forEach(worker -> worker.call(alert));
  }
}
