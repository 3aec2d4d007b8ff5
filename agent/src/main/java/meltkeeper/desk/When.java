package meltkeeper.desk;

import java.time.DateTimeException;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.time.OffsetDateTime;
import java.time.Period;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Supplier;
import meltkeeper.part.Moments;
import meltkeeper.protocol.Fault;

/**
 * Reads a time as a person tells it.
 *
 * @param zone of the shop, for times without an offset
 * @param nowNanos nanoseconds since 1970, for {@code yesterday} and times without a date
 */
public record When(ZoneId zone, long nowNanos) {

  /** What is allowed, in words. */
  public static final String ALLOWED =
      "a time like 2026-03-02T08:00, 2026-03-02T08:00+01:00, 08:00 for today, or \"yesterday"
          + " 16:30\"";

  private static final String SINCE_ALLOWED =
      "a stretch like 12h, 30d or 8w, a date like 2026-03-01, or a time like 2026-03-02T08:00";

  /**
   * The instant, nanoseconds since 1970.
   *
   * @throws RefusedException when it is no time, or not one time: clocks go forward and back
   */
  public long at(String key, String told) {
    return time(told).orElseThrow(() -> refused(key, told, ALLOWED)).nanos(key, told);
  }

  /**
   * The beginning of a stretch up to now: how long it is, or when it began.
   *
   * @throws RefusedException as {@link #at}
   */
  public long since(String key, String told) {
    String text = told.strip().toLowerCase(Locale.ROOT);
    if (text.matches("[0-9]{1,4}h")) {
      return Moments.nanos(now().minus(Duration.ofHours(count(text))));
    }
    if (text.matches("[0-9]{1,4}[dw]")) {
      int days = count(text) * (text.endsWith("w") ? 7 : 1);
      return Moments.nanos(now().atZone(zone).minus(Period.ofDays(days)).toInstant());
    }
    Optional<LocalDate> date = tried(() -> LocalDate.parse(text));
    if (date.isPresent()) {
      return Moments.nanos(date.get().atStartOfDay(zone).toInstant());
    }
    return time(told).orElseThrow(() -> refused(key, told, SINCE_ALLOWED)).nanos(key, told);
  }

  private static int count(String text) {
    return Integer.parseInt(text.substring(0, text.length() - 1));
  }

  /** A time that was read, perhaps one that the zone does not have, or has twice. */
  private record Read(LocalDateTime local, List<ZoneOffset> offsets) {

    long nanos(String key, String told) {
      if (offsets.size() == 1) {
        return Moments.nanos(local.toInstant(offsets.get(0)));
      }
      throw offsets.isEmpty()
          ? refused(key, told, "a time that exists: clocks went forward over this one")
          : refused(
              key,
              told,
              "a time that exists once: clocks went back over this one; add the offset, "
                  + local
                  + offsets.get(0)
                  + " or "
                  + local
                  + offsets.get(1));
    }
  }

  private Optional<Read> time(String told) {
    String text = told.strip().replaceFirst("(?<=[0-9]) +(?=[0-9])", "T");
    if (text.equalsIgnoreCase("now")) {
      return Optional.of(
          new Read(LocalDateTime.ofInstant(now(), ZoneOffset.UTC), List.of(ZoneOffset.UTC)));
    }
    Optional<OffsetDateTime> whole =
        tried(() -> OffsetDateTime.parse(text.toUpperCase(Locale.ROOT)));
    if (whole.isPresent()) {
      return whole
          .filter(at -> isInRange(at.toLocalDateTime()))
          .map(at -> new Read(at.toLocalDateTime(), List.of(at.getOffset())));
    }
    return local(text)
        .filter(When::isInRange)
        .map(local -> new Read(local, zone.getRules().getValidOffsets(local)));
  }

  private Optional<LocalDateTime> local(String text) {
    String lower = text.toLowerCase(Locale.ROOT);
    LocalDate today = now().atZone(zone).toLocalDate();
    if (lower.startsWith("yesterday ")) {
      return clock(lower.substring("yesterday ".length())).map(today.minusDays(1)::atTime);
    }
    if (lower.startsWith("today ")) {
      return clock(lower.substring("today ".length())).map(today::atTime);
    }
    return clock(text)
        .map(today::atTime)
        .or(() -> tried(() -> LocalDateTime.parse(text.toUpperCase(Locale.ROOT))));
  }

  private static Optional<LocalTime> clock(String text) {
    return tried(() -> LocalTime.parse(text.strip(), DateTimeFormatter.ofPattern("H:mm[:ss]")));
  }

  private static boolean isInRange(LocalDateTime local) {
    return local.getYear() >= 1700 && local.getYear() <= 2200;
  }

  private Instant now() {
    return Moments.instant(nowNanos);
  }

  private static <T> Optional<T> tried(Supplier<T> parse) {
    try {
      return Optional.of(parse.get());
    } catch (DateTimeException e) {
      return Optional.empty();
    }
  }

  private static RefusedException refused(String key, String told, String allowed) {
    return new RefusedException(List.of(Fault.of(key, told, allowed)));
  }
}
