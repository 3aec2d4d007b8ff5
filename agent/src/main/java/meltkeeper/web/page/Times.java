package meltkeeper.web.page;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.time.temporal.ChronoUnit;
import java.util.Locale;
import meltkeeper.part.Moments;

/**
 * Times as the shop reads them.
 *
 * @param nowNanos the wall clock, nanoseconds since 1970
 */
public record Times(Texts texts, ZoneId zone, long nowNanos) {

  private static final DateTimeFormatter CLOCK = DateTimeFormatter.ofPattern("HH:mm");
  private static final DateTimeFormatter NEAR_DAY =
      DateTimeFormatter.ofPattern("EEE d MMM", Locale.ENGLISH);
  private static final DateTimeFormatter FAR_DAY =
      DateTimeFormatter.ofPattern("d MMM yyyy", Locale.ENGLISH);
  private static final DateTimeFormatter TOLD =
      DateTimeFormatter.ofPattern("yyyy-MM-dd'T'HH:mm:ss");

  /** Day and time: {@code 14:20} for today, {@code Fri 6 Mar 14:20} for others. */
  public String moment(Instant at) {
    ZonedDateTime local = at.atZone(zone);
    String clock = CLOCK.format(local);
    return local.toLocalDate().equals(today()) ? clock : day(at) + " " + clock;
  }

  /** The day: today, tomorrow, yesterday, {@code Fri 6 Mar}, with the year when it is far off. */
  public String day(Instant at) {
    LocalDate day = at.atZone(zone).toLocalDate();
    long days = ChronoUnit.DAYS.between(today(), day);
    if (days == 0) {
      return texts.say("day.today");
    }
    if (days == 1) {
      return texts.say("day.tomorrow");
    }
    if (days == -1) {
      return texts.say("day.yesterday");
    }
    return (Math.abs(days) < 180 ? NEAR_DAY : FAR_DAY).format(day);
  }

  /** As a form tells it back, with the shop's offset, so that it means one instant. */
  public String told(Instant at) {
    ZonedDateTime local = at.atZone(zone);
    return TOLD.format(local) + local.getOffset();
  }

  /** How long ago, in the largest unit that fits. */
  public String ago(Instant at) {
    long seconds = Math.max(0, ChronoUnit.SECONDS.between(at, now()));
    if (seconds < 90) {
      return texts.say("ago.seconds", seconds);
    }
    return seconds < 5400
        ? texts.say("ago.minutes", seconds / 60)
        : seconds < 172_800
            ? texts.say("ago.hours", seconds / 3600)
            : texts.say("ago.days", seconds / 86_400);
  }

  private Instant now() {
    return Moments.instant(nowNanos);
  }

  private LocalDate today() {
    return now().atZone(zone).toLocalDate();
  }
}
