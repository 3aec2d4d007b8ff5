package meltkeeper.outlook;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import meltkeeper.ledger.Bucket;
import meltkeeper.protocol.HotEnd;
import meltkeeper.store.Store;

/**
 * How long the batches of a hot end usually last: the median of those that the last four weeks
 * hold, by printing time. Batches that follow each other within ten minutes count as one.
 */
final class UsualBatch {

  private static final long DAY_NANOS = 86_400_000_000_000L;
  private static final long LOOK_BACK_NANOS = 28 * DAY_NANOS;
  private static final long PAUSE_NANOS = 600_000_000_000L;

  /** What is shorter is a trial or a purge. */
  private static final double LEAST_HOURS = 0.25;

  /** Fewer say nothing of what is usual. */
  private static final int LEAST_BATCHES = 3;

  private static final double NANOS_AN_HOUR = 3600e9;

  private UsualBatch() {}

  /** Hours; empty when fewer than three batches are known. One that goes on is not counted. */
  static OptionalDouble hours(Store store, HotEnd hotEnd, long nowNanos) {
    List<Double> batches = new ArrayList<>();
    long printing = 0;
    long until = Long.MIN_VALUE;
    for (Bucket bucket : store.buckets(hotEnd, nowNanos - LOOK_BACK_NANOS, nowNanos)) {
      if (bucket.tally().printingNanos() <= 0) {
        continue;
      }
      if (printing > 0 && bucket.fromNanos() - until > PAUSE_NANOS) {
        batches.add(printing / NANOS_AN_HOUR);
        printing = 0;
      }
      printing += bucket.tally().printingNanos();
      until = bucket.untilNanos();
    }
    if (printing > 0 && nowNanos - until > PAUSE_NANOS) {
      batches.add(printing / NANOS_AN_HOUR);
    }
    double[] whole =
        batches.stream()
            .filter(hours -> hours >= LEAST_HOURS)
            .mapToDouble(Double::doubleValue)
            .sorted()
            .toArray();
    int middle = whole.length / 2;
    if (whole.length < LEAST_BATCHES) {
      return OptionalDouble.empty();
    }
    return OptionalDouble.of(
        whole.length % 2 == 1 ? whole[middle] : (whole[middle - 1] + whole[middle]) / 2);
  }
}
