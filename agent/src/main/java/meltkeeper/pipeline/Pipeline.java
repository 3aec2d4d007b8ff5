package meltkeeper.pipeline;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.Semaphore;
import java.util.concurrent.TimeUnit;
import java.util.function.LongSupplier;
import meltkeeper.protocol.HotEnd;
import meltkeeper.protocol.Received;
import meltkeeper.store.StoreException;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Runs an {@link Intake} on the one writer thread. Sources hand over through a bounded queue and
 * wait when it is full, by number or by bytes, so that a broker holds back instead of messages
 * being lost, and memory stays bounded whatever comes. Any thread may call {@link #accept}, {@link
 * #live} and {@link #trail}.
 */
public final class Pipeline implements AutoCloseable {

  private static final Logger LOG = LoggerFactory.getLogger(Pipeline.class);
  private static final int QUEUE = 4096;

  /** What may wait, payloads alone: little beside a heap of 64 MB. */
  private static final int QUEUE_BYTES = 8 << 20;

  private static final long LOOK_EVERY_NANOS = Duration.ofSeconds(1).toNanos();
  private static final long SHOW_EVERY_NANOS = Duration.ofMillis(250).toNanos();

  private final Intake intake;
  private final long commitEveryNanos;
  private final LongSupplier steadyNanos;
  private final BlockingQueue<Received> queue = new ArrayBlockingQueue<>(QUEUE);
  private final Semaphore room = new Semaphore(QUEUE_BYTES, true);
  private final Thread writer;
  private volatile Live live;
  private volatile boolean closing;

  /**
   * Starts the writer.
   *
   * @param commitEvery how long credits may wait for the disk; ten seconds is kind to an SD card.
   *     An alert never waits
   * @param steadyNanos the clock of arrivals
   */
  public Pipeline(Intake intake, Duration commitEvery, LongSupplier steadyNanos) {
    this.intake = intake;
    this.steadyNanos = steadyNanos;
    this.commitEveryNanos = commitEvery.toNanos();
    this.live = intake.live();
    this.writer = new Thread(this::write, "writer");
    writer.start();
  }

  /** Hands one message or line over; waits while the queue is full. */
  public void accept(Received received) throws InterruptedException {
    room.acquire(bytes(received));
    try {
      queue.put(received);
    } catch (InterruptedException e) {
      room.release(bytes(received));
      throw e;
    }
  }

  private static int bytes(Received received) {
    return Math.min(received.payload().length(), QUEUE_BYTES);
  }

  /** What stands now, at most a quarter of a second old. */
  public Live live() {
    return live;
  }

  /** The last day of a hot end, minute by minute, as far as this agent has heard it. */
  public List<Minute> trail(HotEnd hotEnd) {
    return intake.trail(hotEnd);
  }

  /** Number of messages that wait to be read. */
  public int waiting() {
    return queue.size();
  }

  private void write() {
    List<Received> batch = new ArrayList<>();
    long committed = System.nanoTime();
    long looked = committed;
    long shown = committed;
    while (!closing || !queue.isEmpty()) {
      take(batch);
      long now = System.nanoTime();
      if (now - committed >= commitEveryNanos || mustCall(now - committed)) {
        storing(intake::commit);
        committed = now;
      }
      if (now - looked >= LOOK_EVERY_NANOS) {
        storing(intake::noticeFittings);
        intake.look(steadyNanos.getAsLong());
        looked = now;
      }
      if (now - shown >= SHOW_EVERY_NANOS) {
        live = intake.live();
        shown = now;
      }
    }
    storing(intake::commitAtTheEnd);
    live = intake.live();
  }

  /** A store in trouble is not asked again for each message that comes in meanwhile. */
  private boolean mustCall(long sinceCommitNanos) {
    return intake.isCalling() && (!intake.isInTrouble() || sinceCommitNanos >= LOOK_EVERY_NANOS);
  }

  private void take(List<Received> batch) {
    try {
      Received first = queue.poll(100, TimeUnit.MILLISECONDS);
      if (first != null) {
        batch.add(first);
        queue.drainTo(batch, 255);
      }
    } catch (InterruptedException e) {
      closing = true;
    }
    for (Received received : batch) {
      try {
        intake.accept(received);
      } catch (RuntimeException e) {
        LOG.error("a bug in Meltkeeper: {} was not read", received.origin().describe(), e);
      }
      room.release(bytes(received));
    }
    batch.clear();
  }

  private void storing(Runnable action) {
    boolean wasInTrouble = intake.isInTrouble();
    try {
      action.run();
      intake.answered();
      if (wasInTrouble && !intake.isInTrouble()) {
        LOG.info("store: written again, nothing was lost");
      }
    } catch (StoreException e) {
      String why = String.valueOf(e.getMessage());
      intake.failed(why);
      if (!wasInTrouble) {
        LOG.error("store: {}; credits are kept in memory and tried again", why);
      }
    }
  }

  /** Takes in what waits, commits, and ends the writer. */
  @Override
  public void close() {
    closing = true;
    boolean interrupted = false;
    while (writer.isAlive()) {
      try {
        writer.join();
      } catch (InterruptedException e) {
        interrupted = true;
      }
    }
    if (interrupted) {
      Thread.currentThread().interrupt();
    }
  }
}
