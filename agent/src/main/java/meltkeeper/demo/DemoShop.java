package meltkeeper.demo;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Comparator;
import java.util.List;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;

/**
 * The whole demo but the agent: a broker, four printers at a faster pace, a folder for the store.
 * heron and kestrel tell JSON with a time of their own, ibis plain values, egret lines over TCP;
 * kestrel's nozzle closes slowly and is cleared, and ibis leaves out what the jam watch would need.
 * All on the loopback address; nothing is left after {@link #close}.
 */
public final class DemoShop implements AutoCloseable {

  /** Simulated seconds in a second, at most: egret is polled by the clock on the wall. */
  public static final int FASTEST = 120;

  private static final Duration EVERY = Duration.ofSeconds(2);
  private static final long TICK_MILLIS = 15;

  private final DemoClock clock;
  private final Path folder;
  private final EmbeddedBroker broker;
  private final ShopFloor floor;
  private final CountDownLatch closing = new CountDownLatch(1);
  private final Thread ticker = new Thread(this::goOn, "demo-shop");

  /**
   * Opens the shop; its printers wait for {@link #start}.
   *
   * @param startNanos what its clock shows until then, since 1970
   * @param pace simulated seconds in a second, 1 to {@link #FASTEST}
   */
  public DemoShop(long startNanos, int pace) {
    folder = temporaryFolder();
    broker = new EmbeddedBroker();
    clock = new DemoClock(startNanos, pace);
    floor = new ShopFloor(startNanos, EVERY, broker.url());
  }

  /** Starts the clock and the printers. To be called once, when the agent listens. */
  public void start() {
    clock.start();
    ticker.start();
  }

  private void goOn() {
    try {
      while (!closing.await(TICK_MILLIS, TimeUnit.MILLISECONDS)) {
        floor.goOnTo(clock.nanos());
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  /** The time of shop and agent. */
  public DemoClock clock() {
    return clock;
  }

  /** The configuration for the agent. */
  public String configuration() {
    return DemoConfig.text(folder.resolve("meltkeeper.db"), broker.url(), floor.egretPort());
  }

  /** The parts that the shop had before. */
  public List<PastPart> parts() {
    return PastPart.ofTheShop();
  }

  /** Stops everything, and deletes the folder; the agent must have let go of its store. */
  @Override
  public void close() {
    closing.countDown();
    try {
      ticker.join();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
    floor.close();
    broker.close();
    deleteAll(folder);
  }

  private static Path temporaryFolder() {
    try {
      return Files.createTempDirectory("meltkeeper-demo");
    } catch (IOException e) {
      throw new UncheckedIOException("the demo needs a folder for its store", e);
    }
  }

  private static void deleteAll(Path folder) {
    try (Stream<Path> files = Files.walk(folder)) {
      for (Path file : files.sorted(Comparator.reverseOrder()).toList()) {
        Files.deleteIfExists(file);
      }
    } catch (IOException e) {
      throw new UncheckedIOException("the demo's folder was not deleted: " + folder, e);
    }
  }
}
