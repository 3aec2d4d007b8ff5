package meltkeeper.source;

import java.io.IOException;
import java.time.Duration;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import meltkeeper.protocol.gcode.Report;
import meltkeeper.protocol.gcode.Request;

/**
 * Lines that the owner wants a printer sent, and what becomes of them. One thread waits for the
 * outcome, another sends.
 */
final class Order {

  private final List<Request.Ordered> lines;
  private final List<String> unknown = new CopyOnWriteArrayList<>();
  private final CompletableFuture<List<String>> outcome = new CompletableFuture<>();
  private volatile String broken = "";
  private boolean isBegun;
  private boolean isWithdrawn;
  private int sent;

  Order(List<Request.Ordered> lines) {
    this.lines = List.copyOf(lines);
  }

  List<Request.Ordered> lines() {
    return lines;
  }

  /** Begins to send; false when nobody wants it any more. */
  synchronized boolean begin() {
    isBegun = !isWithdrawn;
    return isBegun;
  }

  private synchronized boolean withdraw() {
    isWithdrawn = !isBegun;
    return isWithdrawn;
  }

  /** True when there is nothing more to send or to hear. */
  boolean isDone() {
    return outcome.isDone();
  }

  /** Notes that the next line was sent. */
  void sent() {
    sent++;
  }

  /** Takes note of what the printer said after the line sent last. */
  void hear(Report report) {
    if (sent == 0) {
      return;
    }
    if (report.isRestart()) {
      broke("the printer restarted before it had all lines");
    } else if (report.rejects(lines.get(sent - 1))) {
      unknown.add(lines.get(sent - 1).text());
    } else if (sent == lines.size() && (report.acknowledges() || report.isBusy())) {
      outcome.complete(List.copyOf(unknown));
    }
  }

  /** Notes that the rest cannot be sent. */
  void broke(String why) {
    broken = why;
    outcome.completeExceptionally(new IOException(why));
  }

  /**
   * Waits until the printer has taken all lines.
   *
   * @return the lines that the printer said it does not know
   * @throws IOException when not all were sent
   */
  List<String> await(Duration patience) throws IOException, InterruptedException {
    try {
      return outcome.get(patience.toMillis(), TimeUnit.MILLISECONDS);
    } catch (TimeoutException e) {
      if (withdraw()) {
        throw new IOException(
            "the printer took nothing for " + patience.toSeconds() + " s; nothing was sent", e);
      }
      return List.copyOf(unknown);
    } catch (InterruptedException e) {
      withdraw();
      throw e;
    } catch (ExecutionException e) {
      throw new IOException(broken, e);
    }
  }
}
