package meltkeeper.jam.score;

import java.util.OptionalDouble;

/**
 * How a known jam was called.
 *
 * @param alarm its first alarm, seconds since 1970; empty when none came
 */
public record Call(KnownJam jam, OptionalDouble alarm) {

  private static final double MINUTE_SECONDS = 60;

  /** Minutes from the alarm to the stall; 0 when it came later or never. */
  public double leadMinutes() {
    return Math.max(0, (jam.stall() - alarm.orElse(jam.stall())) / MINUTE_SECONDS);
  }

  /** True when the alarm came before the stall. */
  public boolean isWarned() {
    return leadMinutes() > 0;
  }

  /** Seconds from the stop of the flow to the alarm, below 0 when it came before. */
  public OptionalDouble secondsAfterStop() {
    return alarm.stream().map(at -> at - jam.stop()).findFirst();
  }
}
