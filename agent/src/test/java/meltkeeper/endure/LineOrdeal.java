package meltkeeper.endure;

import java.nio.file.Path;
import java.util.Random;
import meltkeeper.endure.LineShop.Line;

/** A fault that befalls an agent with a printer on a line of its own, some times in a row. */
abstract class LineOrdeal implements Ordeal {

  private final String fault;
  private final int most;
  private final String seen;

  /**
   * @param fault in words
   * @param most how often it is tried at most, for it takes a while
   * @param seen what the owner sees
   */
  LineOrdeal(String fault, int most, String seen) {
    this.fault = fault;
    this.most = most;
    this.seen = seen;
  }

  @Override
  public final String fault() {
    return fault;
  }

  /** The books before and after a fault. */
  record Change(Line before, Line after) {
    long lostNanos() {
      return Math.max(0, after.sinceNanos() - before.sinceNanos());
    }

    long doubledNanos() {
      return Math.max(0, before.sinceNanos() - after.sinceNanos());
    }
  }

  /** Tries it in a shop; how is up to the fault. */
  abstract Iterable<Change> changes(LineShop shop, Path folder, int tries, Random random)
      throws Exception;

  @Override
  public final Tried endure(int times, long seed, Path folder) throws Exception {
    int tries = Math.min(times, most);
    long lost = 0;
    long doubled = 0;
    try (LineShop shop = new LineShop(folder)) {
      for (Change change : changes(shop, folder, tries, new Random(seed))) {
        lost += change.lostNanos();
        doubled += change.doubledNanos();
      }
    }
    return new Tried(fault, tries, lost, doubled, seen);
  }
}
