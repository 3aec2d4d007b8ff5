package meltkeeper.outlook;

import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import meltkeeper.ledger.Bucket;
import meltkeeper.part.Exposure;
import meltkeeper.part.Moments;
import meltkeeper.protocol.HotEnd;
import meltkeeper.store.Store;

/**
 * Reads the duty of hot ends. Days before yesterday are read once and kept. Not for several threads
 * at once.
 */
final class DutyBook {

  /** Four whole weeks, so that each weekday counts alike. */
  private static final int DAYS = 28;

  private static final int SETTLED_AFTER_DAYS = 2;

  private record Page(HotEnd hotEnd, LocalDate date) {}

  private final Store store;
  private final ZoneId zone;
  private final Map<Page, Exposure> kept = new HashMap<>();

  DutyBook(Store store, ZoneId zone) {
    this.store = store;
    this.zone = zone;
  }

  /** The last four weeks of a hot end, or as much of them as it was watched. */
  Duty of(HotEnd hotEnd, long nowNanos) {
    LocalDate today = Moments.instant(nowNanos).atZone(zone).toLocalDate();
    kept.keySet().removeIf(page -> page.date().isBefore(today.minusDays(DAYS + 1)));
    List<Duty.Day> days = new ArrayList<>();
    Exposure hot = Exposure.NONE;
    long watchedFrom = nowNanos - 1;
    boolean begun =
        store.tally(hotEnd, Long.MIN_VALUE, start(today.minusDays(DAYS))).exposure().hotNanos() > 0;
    if (begun) {
      watchedFrom = start(today.minusDays(DAYS));
    }
    for (int back = DAYS; back >= 0; back--) {
      LocalDate date = today.minusDays(back);
      Exposure day = day(hotEnd, date, today, nowNanos);
      boolean whole = begun && back > 0;
      if (!begun && day.hotNanos() > 0) {
        begun = true;
        watchedFrom = firstNanos(hotEnd, start(date), Math.min(start(date.plusDays(1)), nowNanos));
      }
      hot = hot.plus(day);
      if (whole) {
        days.add(new Duty.Day(date, day.hotHours()));
      }
    }
    return new Duty(zone, hot, Math.max(1, nowNanos - watchedFrom), days);
  }

  private Exposure day(HotEnd hotEnd, LocalDate date, LocalDate today, long nowNanos) {
    if (date.isAfter(today.minusDays(SETTLED_AFTER_DAYS))) {
      return store
          .tally(hotEnd, start(date), Math.min(start(date.plusDays(1)), nowNanos))
          .exposure();
    }
    return kept.computeIfAbsent(
        new Page(hotEnd, date),
        page -> store.tally(hotEnd, start(date), start(date.plusDays(1))).exposure());
  }

  private long firstNanos(HotEnd hotEnd, long from, long until) {
    return store.buckets(hotEnd, from, until).stream()
        .filter(bucket -> bucket.tally().exposure().hotNanos() > 0)
        .mapToLong(Bucket::fromNanos)
        .min()
        .orElse(from);
  }

  private long start(LocalDate date) {
    return Moments.nanos(date.atStartOfDay(zone).toInstant());
  }
}
