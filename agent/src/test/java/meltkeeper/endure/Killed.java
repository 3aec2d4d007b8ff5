package meltkeeper.endure;

import java.nio.file.Path;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicReference;
import java.util.concurrent.locks.LockSupport;
import meltkeeper.testing.Publisher;

/**
 * The agent is killed at random moments while readings come over a real broker, every fourth time
 * while it starts.
 */
public final class Killed implements Ordeal {

  private static final long PAUSE_NANOS = 10_000_000;

  /** Some 40 K over a thousand lives. */
  private static final Ramp SLOW = new Ramp(1.5e-4);

  @Override
  public String fault() {
    return "`kill -9` at a random moment";
  }

  @Override
  public Tried endure(int times, long seed, Path folder) throws Exception {
    Random random = new Random(seed);
    try (RampShop shop = new RampShop(folder, SLOW);
        Publisher publisher = new Publisher(shop.broker().url())) {
      // The session must be known to the broker before the first reading.
      shop.startQuickly();
      shop.publish(publisher, 1, 0);
      Books last = begun(shop);
      long startNanos = TimeUnit.SECONDS.toNanos(1);
      long lost = 0;
      long doubled = 0;
      try (Stream stream = new Stream(shop, publisher)) {
        for (int i = 0; i < times; i++) {
          startNanos = live(shop, random, startNanos, last.untilNanos());
          Books books = shop.books();
          lost += books.lostNanos() + Math.max(0, last.untilNanos() - books.untilNanos());
          doubled += books.doubledNanos();
          last = books;
          if (i % 100 == 99) {
            System.err.printf("%d kills, lost %d ns, doubled %d ns%n", i + 1, lost, doubled);
          }
        }
        stream.check();
      }
      try (AgentProcess agent = shop.agent()) {
        agent.awaitReady();
        last = shop.untilCredited();
        agent.end();
      }
      return new Tried(
          fault(),
          times,
          lost + last.lostNanos(),
          doubled + last.doubledNanos(),
          "nothing; the next start goes on (%,d readings, %.1f %% of the hours bridged)"
              .formatted(
                  shop.published(),
                  100.0 * last.bridgedNanos() / (last.untilNanos() - Ramp.BEGAN_NANOS)));
    }
  }

  /** The first reading is in the books: what comes after it is promised. */
  private static Books begun(RampShop shop) throws Exception {
    try (AgentProcess agent = shop.agent()) {
      agent.awaitReady();
      Books books = shop.untilCredited();
      agent.end();
      return books;
    }
  }

  /**
   * One start, and the end of it: in one life of four while it starts, in one after it has credited
   * something new, in the others soon after its page is there.
   *
   * @param creditedNanos until when the books went before
   * @return how long a start takes at present, as far as it was seen
   */
  private static long live(RampShop shop, Random random, long startNanos, long creditedNanos)
      throws Exception {
    long began = System.nanoTime();
    try (AgentProcess agent = shop.agent()) {
      long takes = startNanos;
      int life = random.nextInt(4);
      if (life == 0) {
        LockSupport.parkNanos(random.nextLong(startNanos));
      } else {
        agent.awaitReady();
        takes = System.nanoTime() - began;
        if (life == 1) {
          RampShop.until("it credits", () -> shop.books().untilNanos() > creditedNanos);
        }
        LockSupport.parkNanos(random.nextLong(500_000_000L));
      }
      agent.kill();
      return takes;
    }
  }

  /** The printer, which publishes all the while. */
  private static final class Stream implements AutoCloseable {

    private final AtomicReference<Exception> failure = new AtomicReference<>();
    private final Thread thread;
    private volatile boolean ended;

    Stream(RampShop shop, Publisher publisher) {
      thread = new Thread(() -> run(shop, publisher), "printer");
      thread.start();
    }

    private void run(RampShop shop, Publisher publisher) {
      try {
        while (!ended) {
          shop.publish(publisher, 1, PAUSE_NANOS);
        }
      } catch (Exception e) {
        failure.set(e);
      }
    }

    void check() {
      if (failure.get() != null) {
        throw new AssertionError("the printer could not publish", failure.get());
      }
    }

    @Override
    public void close() {
      ended = true;
      LockSupport.unpark(thread);
      while (thread.isAlive()) {
        LockSupport.parkNanos(PAUSE_NANOS);
      }
    }
  }
}
