package meltkeeper.alert.route;

import java.time.Instant;
import java.time.LocalTime;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.util.Optional;

/**
 * A stretch of each day in which only what is pressing calls.
 *
 * @param from inclusive
 * @param until exclusive; before {@code from} when the stretch passes midnight
 */
public record QuietHours(LocalTime from, LocalTime until, ZoneId zone) {

  public QuietHours {
    if (from.equals(until)) {
      throw new IllegalArgumentException("quiet hours from " + from + " until " + until);
    }
  }

  /** When the quiet that holds now will end; empty outside of it. */
  public Optional<Instant> endIfQuiet(Instant now) {
    ZonedDateTime local = now.atZone(zone);
    LocalTime time = local.toLocalTime();
    boolean passesMidnight = until.isBefore(from);
    boolean isQuiet =
        passesMidnight
            ? !time.isBefore(from) || time.isBefore(until)
            : !time.isBefore(from) && time.isBefore(until);
    if (!isQuiet) {
      return Optional.empty();
    }
    boolean endsTomorrow = passesMidnight && !time.isBefore(from);
    return Optional.of(
        local.toLocalDate().plusDays(endsTomorrow ? 1 : 0).atTime(until).atZone(zone).toInstant());
  }
}
