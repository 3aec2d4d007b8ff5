package meltkeeper.testing;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Semaphore;
import meltkeeper.protocol.Received;
import meltkeeper.source.Inlet;

/** An inlet that keeps what it took, and can be shut: then it blocks whoever hands over. */
public final class Catch implements Inlet {

  private final List<Received> taken = new ArrayList<>();
  private final Semaphore open = new Semaphore(1);

  @Override
  public void accept(Received received) throws InterruptedException {
    open.acquire();
    open.release();
    synchronized (taken) {
      taken.add(received);
    }
  }

  /** From now on nothing is taken, until {@link #open}. */
  public void shut() {
    open.acquireUninterruptibly();
  }

  public void open() {
    open.release();
  }

  /** True while somebody waits to hand over. */
  public boolean isBlocking() {
    return open.hasQueuedThreads();
  }

  /** All that was taken, in order. */
  public List<Received> taken() {
    synchronized (taken) {
      return List.copyOf(taken);
    }
  }

  /** The payloads, in order. */
  public List<String> texts() {
    return taken().stream().map(received -> received.payload().text()).toList();
  }
}
