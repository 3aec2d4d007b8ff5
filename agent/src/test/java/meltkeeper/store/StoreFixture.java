package meltkeeper.store;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import meltkeeper.ledger.Account;
import meltkeeper.ledger.Bucket;
import meltkeeper.ledger.Tally;
import meltkeeper.part.Exposure;
import meltkeeper.protocol.HotEnd;

/** Facts of a shop of our own, for tests of stores. */
public final class StoreFixture {

  public static final HotEnd HERON = HotEnd.first("heron");
  public static final HotEnd IBIS = new HotEnd("ibis", 1);
  public static final long SECOND = 1_000_000_000L;

  /** 2026-03-02T08:00:00Z, an edge of the five-minute lattice. */
  public static final long MORNING = 1_772_438_400L * SECOND;

  private StoreFixture() {}

  public static Tally hot(int band, long seconds) {
    return new Tally(
        new Exposure(
            new TreeMap<>(
                Map.of(
                    band, new Exposure.Heat(seconds * SECOND, (band + 2) * seconds * 1_000_000L)))),
        0,
        0,
        0,
        seconds * SECOND,
        seconds * 3_000,
        seconds * 2_900);
  }

  /** A whole bucket, the first beginning in the morning. */
  public static Bucket bucket(HotEnd hotEnd, int number, Tally tally) {
    long from = MORNING + number * Bucket.LENGTH_NANOS;
    return new Bucket(hotEnd, from, from + Bucket.LENGTH_NANOS, tally);
  }

  public static Account account(HotEnd hotEnd, Tally total) {
    return Account.opened(hotEnd).credited(total);
  }

  public static Commit credits(Bucket... credits) {
    return new Commit(List.of(credits), List.of(), List.of());
  }

  /** An alert of an episode, some seconds after the morning. */
  public static Alert alert(Episode episode, Alert.Phase phase, long second) {
    return new Alert(episode, phase, 0, MORNING + second * SECOND, "told after " + second + " s");
  }

  /** Buckets on and off the lattice, some overlapping as after a clock that was set back. */
  public static List<Bucket> anyBuckets(Random random, HotEnd hotEnd, int count) {
    List<Bucket> buckets = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      long from = MORNING + random.nextInt(40) * Bucket.LENGTH_NANOS;
      long until = from + Bucket.LENGTH_NANOS;
      if (random.nextInt(3) == 0) {
        from += random.nextLong(Bucket.LENGTH_NANOS - 1);
      } else if (random.nextInt(3) == 0) {
        until -= random.nextLong(Bucket.LENGTH_NANOS - 1);
      }
      buckets.add(new Bucket(hotEnd, from, until, anyTally(random)));
    }
    return buckets;
  }

  private static Tally anyTally(Random random) {
    TreeMap<Integer, Exposure.Heat> bands = new TreeMap<>();
    for (int i = random.nextInt(4); i > 0; i--) {
      bands.put(
          200 + 5 * random.nextInt(8),
          new Exposure.Heat(
              random.nextLong(-100, Bucket.LENGTH_NANOS), random.nextLong(-100, 66_000_000_000L)));
    }
    return new Tally(
        new Exposure(bands),
        random.nextInt(5) == 0 ? random.nextLong(Bucket.LENGTH_NANOS) : 0,
        random.nextInt(5) == 0 ? random.nextLong(Bucket.LENGTH_NANOS) : 0,
        random.nextLong(Bucket.LENGTH_NANOS),
        random.nextLong(Bucket.LENGTH_NANOS),
        random.nextLong(-1_000, 3_000_000),
        random.nextLong(-1_000, 3_000_000));
  }
}
