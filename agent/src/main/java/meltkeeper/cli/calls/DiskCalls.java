package meltkeeper.cli.calls;

import java.util.OptionalLong;
import java.util.function.Supplier;
import meltkeeper.store.AlertTopic;
import meltkeeper.store.Episodes;
import meltkeeper.store.Subject;

/** Calls while there is still room for the call: when the store's disk is nearly full. */
final class DiskCalls {

  /** Some months of a small shop, and room for a backup to fail politely. */
  static final long LITTLE_BYTES = 100_000_000;

  private static final long ENOUGH_BYTES = 2 * LITTLE_BYTES;
  private static final long BYTES_A_MEGABYTE = 1_000_000;

  private final Supplier<OptionalLong> freeBytes;
  private final Episodes episodes;

  /**
   * @param freeBytes on the disk of the store; empty where nobody can tell
   */
  DiskCalls(Supplier<OptionalLong> freeBytes, Episodes episodes) {
    this.freeBytes = freeBytes;
    this.episodes = episodes;
  }

  /** Looks at the disk. Whatever is to be told is pending with the episodes then. */
  void look(long nowNanos) {
    OptionalLong free = freeBytes.get();
    if (free.isEmpty()) {
      return;
    }
    long megabytes = free.getAsLong() / BYTES_A_MEGABYTE;
    if (free.getAsLong() < LITTLE_BYTES) {
      episodes.begin(
          AlertTopic.STORE_TROUBLE,
          new Subject.OfAgent(),
          nowNanos,
          false,
          "Only "
              + megabytes
              + " MB are free on the disk of the store. Make room: once it is full, hours are kept"
              + " in memory alone.");
    } else if (free.getAsLong() > ENOUGH_BYTES) {
      episodes.end(
          AlertTopic.STORE_TROUBLE,
          new Subject.OfAgent(),
          nowNanos,
          megabytes + " MB are free on the disk of the store again.");
    }
  }
}
