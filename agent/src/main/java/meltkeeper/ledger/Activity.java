package meltkeeper.ledger;

import java.util.Optional;
import meltkeeper.protocol.JobState;

/**
 * What the printer is doing.
 *
 * @param lastNanos time of the last reading of any signal; {@link Long#MIN_VALUE} before the first
 * @param state the job's state as mapped; empty when no state was ever told
 * @param stateNanos when it was told
 * @param feedKnown true once filament was ever told
 * @param fedNanos when filament was last seen to rise; {@link Long#MIN_VALUE} for never
 */
record Activity(
    long lastNanos, Optional<JobState> state, long stateNanos, boolean feedKnown, long fedNanos) {

  static final Activity UNKNOWN =
      new Activity(Long.MIN_VALUE, Optional.empty(), Long.MIN_VALUE, false, Long.MIN_VALUE);

  /** Feeding is taken to go on for this long after filament last rose. */
  private static final long LINGER_NANOS = 60_000_000_000L;

  /** Until when the last rise of filament counts as feeding. */
  private long feedingUntil() {
    return fedNanos == Long.MIN_VALUE ? Long.MIN_VALUE : fedNanos + LINGER_NANOS;
  }

  /** Credits printing from the last reading to this one, if they are no gap apart. */
  Activity advance(long nanos, long gapNanos, Credits credits) {
    if (nanos <= lastNanos) {
      return this;
    }
    if (lastNanos != Long.MIN_VALUE && nanos - lastNanos <= gapNanos) {
      long until = printingUntil(nanos);
      if (until > lastNanos) {
        credits.spread(Credits.Measure.PRINTING, lastNanos, until);
      }
    }
    return new Activity(nanos, state, stateNanos, feedKnown, fedNanos);
  }

  private long printingUntil(long nanos) {
    if (state.isPresent()) {
      return state.get() == JobState.PRINTING ? nanos : Long.MIN_VALUE;
    }
    return Math.min(nanos, feedingUntil());
  }

  /** Credits the part of a hot stretch in which nothing was fed. */
  void creditIdle(TemperatureLine.Hot hot, Credits credits) {
    long from = hot.fromNanos();
    if (feedKnown) {
      from = Math.max(from, feedingUntil());
    } else if (state.isEmpty() || state.get() == JobState.PRINTING) {
      return;
    }
    credits.spread(Credits.Measure.IDLE, from, hot.untilNanos());
  }

  Activity told(JobState news, long nanos) {
    return new Activity(lastNanos, Optional.of(news), nanos, feedKnown, fedNanos);
  }

  Activity fed(boolean rose, long nanos) {
    return new Activity(lastNanos, state, stateNanos, true, rose ? nanos : fedNanos);
  }

  /** The same on a clock that was set back. */
  Activity onClockSetBackTo(long nanos) {
    return new Activity(
        Math.min(lastNanos, nanos),
        state,
        Math.min(stateNanos, nanos),
        feedKnown,
        Math.min(fedNanos, nanos));
  }
}
