package meltkeeper.outlook;

import java.time.DayOfWeek;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import meltkeeper.part.Exposure;

/**
 * What the days of a hot end bring: hot time by temperature over the last four weeks, and how it
 * spreads over the week.
 *
 * @param zone in which days begin and end
 * @param hot all of it
 * @param watchedNanos how long was watched; above 0
 * @param days the whole days among it, in order
 */
public record Duty(ZoneId zone, Exposure hot, long watchedNanos, List<Day> days) {

  private static final long HOUR_NANOS = 3_600_000_000_000L;

  /** Each weekday was seen twice then. */
  private static final int ENOUGH_DAYS_FOR_A_WEEK = 14;

  private static final int FURTHEST_DAYS = 3650;

  /** A day and its hot hours. */
  public record Day(LocalDate date, double hotHours) {}

  /** Of a hot end that was never heard. */
  static final Duty UNKNOWN = new Duty(java.time.ZoneOffset.UTC, Exposure.NONE, 1, List.of());

  public Duty {
    days = List.copyOf(days);
  }

  /** True when it was never hot: nothing can be said of what is to come. */
  boolean isIdle() {
    return hot.hotNanos() == 0;
  }

  /** What an average hour by the clock brings. */
  Exposure perHour() {
    return hot.share(HOUR_NANOS, watchedNanos);
  }

  /** What so many average days bring. */
  Exposure ofDays(long count) {
    return hot.share(24 * count * HOUR_NANOS, watchedNanos);
  }

  /**
   * Relative standard deviation of what so many days to come will bring, from how days differ and
   * from how few were watched; 0 when fewer than two whole days were.
   */
  double spreadOver(double daysToCome) {
    int n = days.size();
    double mean = days.stream().mapToDouble(Day::hotHours).average().orElse(0);
    if (n < 2 || !(mean > 0)) {
      return 0;
    }
    Map<DayOfWeek, Double> week = week();
    double sum = 0;
    for (Day day : days) {
      double expected = mean * week.getOrDefault(day.date().getDayOfWeek(), 1.0);
      sum += Math.pow(day.hotHours() - expected, 2);
    }
    double ofOneDay = Math.sqrt(sum / (n - 1)) / mean;
    return ofOneDay * Math.sqrt(1 / Math.max(1, daysToCome) + 1.0 / n);
  }

  /**
   * When so many average hours by the clock will have brought their share, busy and quiet weekdays
   * counted; empty when that is more than ten years away.
   */
  Optional<Instant> after(Instant now, double averageHours) {
    Map<DayOfWeek, Double> week = week();
    double left = averageHours;
    ZonedDateTime at = now.atZone(zone);
    for (int day = 0; day < FURTHEST_DAYS; day++) {
      ZonedDateTime next = at.toLocalDate().plusDays(1).atStartOfDay(zone);
      double weight = week.getOrDefault(at.getDayOfWeek(), 1.0);
      double hours = java.time.Duration.between(at, next).toNanos() / 3600e9;
      if (left <= weight * hours) {
        double share = weight > 0 ? left / weight : 0;
        return Optional.of(at.plusNanos(Math.round(share * HOUR_NANOS)).toInstant());
      }
      left -= weight * hours;
      at = next;
    }
    return Optional.empty();
  }

  /** Each weekday's hours against the mean day's; all alike while the week is not known. */
  private Map<DayOfWeek, Double> week() {
    Map<DayOfWeek, Double> week = new EnumMap<>(DayOfWeek.class);
    double mean = days.stream().mapToDouble(Day::hotHours).average().orElse(0);
    if (days.size() < ENOUGH_DAYS_FOR_A_WEEK || !(mean > 0)) {
      return week;
    }
    for (DayOfWeek weekday : DayOfWeek.values()) {
      week.put(
          weekday,
          days.stream()
                  .filter(day -> day.date().getDayOfWeek() == weekday)
                  .mapToDouble(Day::hotHours)
                  .average()
                  .orElse(mean)
              / mean);
    }
    return week;
  }
}
