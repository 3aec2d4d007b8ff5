package meltkeeper.cli.calls;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import meltkeeper.outlook.FittedOutlook;
import meltkeeper.part.Moments;
import meltkeeper.protocol.HotEnd;
import meltkeeper.store.AlertTopic;
import meltkeeper.store.Episodes;
import meltkeeper.store.OpenEpisode;
import meltkeeper.store.Subject;

/**
 * Calls for parts that near or pass their advised age. What is learned moves the date a little from
 * day to day, so an episode ends only when the date has moved well away, or the part is off. For
 * one thread.
 */
final class DueCalls {

  static final Duration SOON = Duration.ofDays(7);
  private static final Duration NOT_SOON = Duration.ofDays(9);
  private static final Duration NOT_OVERDUE = Duration.ofDays(1);
  private static final double HOURS_A_DAY = 24;

  private final ZoneId zone;
  private final Episodes episodes;
  private final Set<Subject> known = new HashSet<>();

  /**
   * A fitted part with a date.
   *
   * @param hours by the clock until its advised age, 0 when it is past it
   * @param at the date, where it is known
   */
  record Ahead(String id, String kind, HotEnd hotEnd, double hours, Optional<Instant> at) {

    /** The parts that have a date. */
    static List<Ahead> of(List<FittedOutlook> parts) {
      List<Ahead> ahead = new ArrayList<>();
      for (FittedOutlook part : parts) {
        part.due()
            .map(due -> new Ahead(part.id(), part.kind(), part.hotEnd(), due.hours(), due.at()))
            .ifPresent(ahead::add);
      }
      return ahead;
    }
  }

  /**
   * @param open episodes that went on when the store was last written
   */
  DueCalls(Episodes episodes, List<OpenEpisode> open, ZoneId zone) {
    this.episodes = episodes;
    this.zone = zone;
    for (OpenEpisode episode : open) {
      AlertTopic topic = episode.latest().topic();
      if (topic == AlertTopic.PART_DUE || topic == AlertTopic.PART_OVERDUE) {
        known.add(episode.latest().subject());
      }
    }
  }

  /** Looks at what lies ahead. Whatever is to be told is pending with the episodes then. */
  void look(List<Ahead> parts, long nowNanos) {
    Set<Subject> now = new HashSet<>();
    for (Ahead part : parts) {
      Subject subject = new Subject.OfPart(part.id(), part.hotEnd());
      now.add(subject);
      judge(part, subject, nowNanos);
    }
    for (Subject gone : known) {
      if (!now.contains(gone)) {
        String text = gone.partId().orElse("the part") + " is off, or its date is far away now.";
        episodes.end(AlertTopic.PART_DUE, gone, nowNanos, text);
        episodes.end(AlertTopic.PART_OVERDUE, gone, nowNanos, text);
      }
    }
    known.clear();
    known.addAll(now);
  }

  private void judge(Ahead part, Subject subject, long nowNanos) {
    String name = part.id() + " (" + part.kind() + ") on " + part.hotEnd();
    double hours = part.hours();
    if (!(hours > 0)) {
      episodes.begin(
          AlertTopic.PART_OVERDUE,
          subject,
          nowNanos,
          false,
          name + " has passed its advised age. Replace it between two batches.");
    } else if (hours > hours(NOT_OVERDUE)) {
      episodes.end(AlertTopic.PART_OVERDUE, subject, nowNanos, name + " is not overdue any more.");
    }
    if (hours > 0 && hours <= hours(SOON)) {
      String date =
          part.at().map(at -> Moments.words(Moments.nanos(at), zone)).orElse("within seven days");
      episodes.begin(
          AlertTopic.PART_DUE,
          subject,
          nowNanos,
          false,
          name
              + " reaches its advised age in about "
              + Math.max(1, Math.round(hours / HOURS_A_DAY))
              + " days ("
              + date
              + ") at its present duty. Have a new one ready.");
    } else if (hours > hours(NOT_SOON)) {
      episodes.end(AlertTopic.PART_DUE, subject, nowNanos, name + " is not due soon any more.");
    }
  }

  private static double hours(Duration duration) {
    return duration.toSeconds() / 3600.0;
  }
}
