package meltkeeper.jam.score;

import java.util.List;
import java.util.OptionalDouble;
import meltkeeper.protocol.HotEnd;

/**
 * A jam that happened, as alarms are scored against it. Seconds since 1970.
 *
 * @param onset from here an alarm is of this jam, and not false
 * @param stop when the flow stopped, for alarms that came after it
 * @param stall up to here an alarm is a warning; its lead is the time left
 * @param over after this an alarm is false again
 */
public record KnownJam(HotEnd hotEnd, double onset, double stop, double stall, double over) {

  /** So long before the stall a jam may have begun, where nobody says when (our own choice). */
  public static final double LONGEST_NARROWING_SECONDS = 6 * 3600;

  private static final double AFTERMATH_SECONDS = 1800;
  private static final double MINUTE_SECONDS = 60;

  /**
   * A jam that somebody noted. Where the recording shows a minute without flow before it was
   * noticed, the stall is the end of that minute, and not when somebody came by.
   *
   * @param began when it began, where somebody knows
   * @param noticed when it stalled or was found
   */
  public static KnownJam noted(
      HotEnd hotEnd, OptionalDouble began, double noticed, FeedRecord feed) {
    double onset = began.orElse(noticed - LONGEST_NARROWING_SECONDS);
    OptionalDouble shown = feed.stalled(onset, noticed);
    double stall = shown.orElse(noticed);
    double stop = shown.isPresent() ? stall - MINUTE_SECONDS : stall;
    return new KnownJam(hotEnd, onset, stop, stall, noticed + AFTERMATH_SECONDS);
  }

  /** True when the recording showed the stall itself. */
  public boolean wasShown() {
    return stop < stall;
  }

  /** True when an alarm of that hot end at that time is of one of the jams. */
  public static boolean anyHolds(List<KnownJam> jams, HotEnd hotEnd, double seconds) {
    return jams.stream()
        .anyMatch(jam -> jam.hotEnd.equals(hotEnd) && jam.onset <= seconds && seconds <= jam.over);
  }

  /** How it was called by the alarms of its hot end. */
  public Call call(Alarms alarms) {
    return new Call(this, alarms.firstFrom(onset).stream().filter(at -> at <= over).findFirst());
  }
}
