package meltkeeper.ledger;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import java.util.TreeMap;
import meltkeeper.part.Exposure;
import meltkeeper.protocol.HotEnd;

/**
 * Collects what is credited to one hot end, bucket by bucket, until it is committed. Mutable, for
 * one thread. A stretch of time is shared among the buckets that it crosses without loss.
 */
public final class Credits {

  private final HotEnd hotEnd;
  private final Grid grid;
  private final NavigableMap<Long, Sums> buckets = new TreeMap<>();
  private long latestFrom = Long.MIN_VALUE;
  private long latestUntil = Long.MIN_VALUE;
  private Sums latest = new Sums();

  public Credits(HotEnd hotEnd, Grid grid) {
    this.hotEnd = hotEnd;
    this.grid = grid;
  }

  /** An amount that belongs to a moment or to a stretch of time. */
  enum Measure {
    BRIDGED,
    UNOBSERVED,
    IDLE,
    PRINTING,
    COMMANDED,
    MEASURED
  }

  private static final class Sums {
    private final Map<Measure, Long> amounts = new EnumMap<>(Measure.class);
    private Exposure exposure = Exposure.NONE;
    private int band;
    private long bandNanos;
    private long bandHeat;

    private void heat(int inBand, long nanos, long heat) {
      if (inBand != band) {
        settle();
        band = inBand;
      }
      bandNanos += nanos;
      bandHeat += heat;
    }

    /** Several hot pieces in one band come in a row: they are summed before the map is touched. */
    private void settle() {
      if (bandNanos != 0 || bandHeat != 0) {
        NavigableMap<Integer, Exposure.Heat> one = new TreeMap<>();
        one.put(band, new Exposure.Heat(bandNanos, bandHeat));
        exposure = exposure.plus(new Exposure(one));
        bandNanos = 0;
        bandHeat = 0;
      }
    }

    private long amount(Measure measure) {
      return amounts.getOrDefault(measure, 0L);
    }

    private Tally tally() {
      settle();
      return new Tally(
          exposure,
          amount(Measure.BRIDGED),
          amount(Measure.UNOBSERVED),
          amount(Measure.IDLE),
          amount(Measure.PRINTING),
          amount(Measure.COMMANDED),
          amount(Measure.MEASURED));
    }
  }

  /** Credits an amount to the bucket that holds the moment. */
  void add(Measure measure, long atNanos, long amount) {
    if (amount != 0) {
      bucket(atNanos).amounts.merge(measure, amount, Math::addExact);
    }
  }

  /** Credits the time itself. */
  void spread(Measure measure, long fromNanos, long untilNanos) {
    long from = fromNanos;
    while (from < untilNanos) {
      long until = Math.min(untilNanos, grid.edgeAfter(from));
      add(measure, from, until - from);
      from = until;
    }
  }

  /** Credits hot time on a line: a piece that stays within one band. */
  void heat(int band, TemperatureLine line, long fromNanos, long untilNanos) {
    long from = fromNanos;
    while (from < untilNanos) {
      Sums sums = bucket(from);
      long until = Math.min(untilNanos, latestUntil);
      sums.heat(band, until - from, line.heat(from, until));
      from = until;
    }
  }

  private Sums bucket(long atNanos) {
    if (atNanos < latestFrom || atNanos >= latestUntil) {
      latestFrom = grid.edgeAtOrBefore(atNanos);
      latestUntil = grid.edgeAfter(atNanos);
      latest = buckets.computeIfAbsent(latestFrom, from -> new Sums());
    }
    return latest;
  }

  /** What was collected, by beginning. */
  public List<Bucket> buckets() {
    List<Bucket> all = new ArrayList<>();
    buckets.forEach(
        (from, sums) -> {
          Tally tally = sums.tally();
          if (!tally.equals(Tally.NONE)) {
            all.add(new Bucket(hotEnd, from, grid.edgeAfter(from), tally));
          }
        });
    return all;
  }

  /** The sum of what was collected. */
  public Tally sum() {
    Tally sum = Tally.NONE;
    for (Sums sums : buckets.values()) {
      sum = sum.plus(sums.tally());
    }
    return sum;
  }

  /** True when nothing was collected. */
  public boolean isEmpty() {
    return buckets.isEmpty();
  }
}
