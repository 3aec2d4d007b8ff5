package meltkeeper.cli;

import java.util.concurrent.CountDownLatch;

/** Lets a running command end in good order on Ctrl-C or when it is asked to stop. */
final class StopSignal {

  private StopSignal() {}

  /**
   * Arranges that the signal to end opens {@code stopped}, and that the process waits for {@code
   * closed} before it goes.
   */
  static void arrange(CountDownLatch stopped, CountDownLatch closed) {
    Runtime.getRuntime().addShutdownHook(new Thread(() -> stop(stopped, closed), "stop"));
  }

  private static void stop(CountDownLatch stopped, CountDownLatch closed) {
    stopped.countDown();
    try {
      closed.await();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }
}
