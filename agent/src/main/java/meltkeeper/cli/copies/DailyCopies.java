package meltkeeper.cli.copies;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.LocalDate;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import java.util.function.Supplier;
import meltkeeper.config.CopySettings;
import meltkeeper.store.StoreException;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Makes a copy of the store each day, on a thread of its own, and deletes the oldest ones. A day
 * begins with the first look after midnight; a copy that fails is tried again at the next look.
 */
public final class DailyCopies implements AutoCloseable {

  private static final Logger LOG = LoggerFactory.getLogger(DailyCopies.class);

  /** A copy must never be what fills the disk: this much stays free beside it. */
  private static final long FREE_BYTES = 64L << 20;

  /** Writes a copy of the store to a new file. */
  @FunctionalInterface
  public interface Copying {
    void to(Path file);
  }

  private final Path store;
  private final CopyShelf shelf;
  private final Copying copying;
  private final Supplier<LocalDate> today;
  private final ScheduledExecutorService thread =
      Executors.newSingleThreadScheduledExecutor(work -> new Thread(work, "daily copy"));
  private boolean failed;

  /** Copies that have not begun. */
  public DailyCopies(
      Path store, CopySettings settings, Copying copying, Supplier<LocalDate> today) {
    this.store = store;
    this.shelf = new CopyShelf(settings.folder(), settings.keep());
    this.copying = copying;
    this.today = today;
  }

  /**
   * Looks now and again, unless no copies are to be kept.
   *
   * @param every between two looks
   */
  public void begin(Duration every) {
    if (shelf.keep() > 0) {
      Future<?> unused =
          thread.scheduleWithFixedDelay(
              this::look, every.toNanos(), every.toNanos(), TimeUnit.NANOSECONDS);
    }
  }

  /** Makes today's copy if it is not there. */
  void look() {
    LocalDate day = today.get();
    try {
      if (!Files.exists(shelf.of(day)) && Files.exists(store)) {
        Files.createDirectories(shelf.folder());
        checkRoom();
        copying.to(shelf.of(day));
        shelf.prune(day);
        LOG.info("daily copy: {}", shelf.of(day));
      }
      failed = false;
    } catch (IOException | StoreException e) {
      complain(String.valueOf(e.getMessage()));
    } catch (RuntimeException e) {
      LOG.error("a bug in Meltkeeper: no daily copy", e);
    }
  }

  private void checkRoom() throws IOException {
    long free = Files.getFileStore(shelf.folder()).getUsableSpace();
    long needed = Files.size(store) + FREE_BYTES;
    if (free < needed) {
      throw new IOException(
          "%s has %d MB free, a copy needs %d MB; make room, or name another folder in backup"
              .formatted(shelf.folder(), free >> 20, needed >> 20));
    }
  }

  private void complain(String why) {
    if (!failed) {
      LOG.warn("no daily copy of the store: {}; it is tried again", why);
    }
    failed = true;
  }

  @Override
  public void close() {
    thread.shutdown();
    try {
      if (!thread.awaitTermination(1, TimeUnit.MINUTES)) {
        thread.shutdownNow();
      }
    } catch (InterruptedException e) {
      thread.shutdownNow();
      Thread.currentThread().interrupt();
    }
  }
}
