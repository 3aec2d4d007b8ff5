package meltkeeper.source.mqtt;

import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;

/** An answer of the broker that is waited for. */
abstract class PendingAnswer {

  private final CompletableFuture<Optional<String>> refusal = new CompletableFuture<>();

  final boolean isDone() {
    return refusal.isDone();
  }

  final void granted() {
    refusal.complete(Optional.empty());
  }

  final void refused(String reason) {
    refusal.complete(Optional.of(reason));
  }

  /**
   * Waits as long as the order allows. The time does not run while a message is being handed over:
   * the answer may be queued behind it.
   */
  final void await(Link.Order order) throws LinkException, InterruptedException {
    try {
      Optional<String> reason = patiently(order);
      if (reason.isPresent()) {
        throw new LinkException(reason.get());
      }
    } catch (TimeoutException e) {
      throw new LinkException(
          "the broker does not answer within " + order.timing().answer().toSeconds() + " s");
    } catch (ExecutionException e) {
      throw new IllegalStateException("bug: an answer never fails", e);
    }
  }

  private Optional<String> patiently(Link.Order order)
      throws InterruptedException, ExecutionException, TimeoutException {
    while (true) {
      try {
        return refusal.get(order.timing().answer().toMillis(), TimeUnit.MILLISECONDS);
      } catch (TimeoutException e) {
        if (!order.delivery().isHandingOver()) {
          throw e;
        }
      }
    }
  }
}
