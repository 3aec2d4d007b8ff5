package meltkeeper.outlook;

import java.util.List;
import java.util.OptionalDouble;
import meltkeeper.ledger.Bucket;
import meltkeeper.part.Exposure;
import meltkeeper.part.Fitting;
import meltkeeper.store.Store;

/** The temperature of the last hot hour of a stay. */
final class LastHour {

  private static final long HOUR_NANOS = 3_600_000_000_000L;
  private static final long FIRST_LOOK_NANOS = 6 * HOUR_NANOS;

  private LastHour() {}

  /** Mean temperature, °C; empty when the ledger does not hold a whole hot hour of the stay. */
  static OptionalDouble celsius(Store store, Fitting stay) {
    long until = stay.until();
    long before = until;
    Exposure last = Exposure.NONE;
    for (long look = FIRST_LOOK_NANOS; before > stay.fromNanos(); look *= 4) {
      long from = before - stay.fromNanos() > look ? before - look : stay.fromNanos();
      List<Bucket> buckets = store.buckets(stay.hotEnd(), from, before);
      for (int i = buckets.size() - 1; i >= 0; i--) {
        last = last.plus(buckets.get(i).within(from, before).exposure());
        if (last.hotNanos() >= HOUR_NANOS) {
          return OptionalDouble.of(last.weightedHours(celsius -> celsius) / last.hotHours());
        }
      }
      before = from;
    }
    return OptionalDouble.empty();
  }
}
