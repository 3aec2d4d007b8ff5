package meltkeeper.alert;

import java.util.Optional;
import java.util.concurrent.ConcurrentLinkedDeque;
import meltkeeper.store.Alert;

/** Calls that cannot go through the outbox. Any thread may add, one thread tries. */
final class Direct {

  private final ConcurrentLinkedDeque<Alert> calls = new ConcurrentLinkedDeque<>();
  private long nextNanos = Long.MIN_VALUE;
  private int failures;

  void add(Alert alert) {
    calls.addLast(alert);
  }

  /** The next call that is due. */
  Optional<Alert> due(long nowNanos) {
    return nowNanos >= nextNanos ? Optional.ofNullable(calls.peekFirst()) : Optional.empty();
  }

  /** Notes that the first call is done with. */
  void done() {
    failures = 0;
    calls.pollFirst();
  }

  /** Notes that the first call failed, and gives the number of its failures. */
  int failed() {
    return ++failures;
  }

  void next(long nanos) {
    nextNanos = nanos;
  }
}
