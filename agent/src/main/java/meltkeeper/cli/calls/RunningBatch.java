package meltkeeper.cli.calls;

import java.util.OptionalDouble;
import meltkeeper.pipeline.HotEndLive;
import meltkeeper.protocol.JobState;

/**
 * A batch that runs, and what its progress says of its end. Progress is taken to rise evenly with
 * time from where it was first seen.
 *
 * @param job its name, empty when the printer tells none
 * @param sinceNanos when it was first seen
 * @param isSeenFromItsStart false when it ran already when we began to listen
 * @param markNanos when progress was first seen
 * @param mark the progress seen then
 */
record RunningBatch(
    String job, long sinceNanos, boolean isSeenFromItsStart, long markNanos, OptionalDouble mark) {

  /** Less progress than this, or less time, says nothing of the rest. */
  static final double ENOUGH_PROGRESS = 0.02;

  static final long ENOUGH_NANOS = 300_000_000_000L;

  private static final double NANOS_AN_HOUR = 3600e9;

  static RunningBatch first(HotEndLive seen, long nowNanos, boolean isSeenFromItsStart) {
    return new RunningBatch(seen.job(), nowNanos, isSeenFromItsStart, nowNanos, seen.progress());
  }

  /** True while a hot end works on a batch. */
  static boolean runs(HotEndLive seen) {
    return seen.state().filter(state -> state != JobState.IDLE).isPresent();
  }

  /** True when it is this batch that is seen. */
  boolean isOf(HotEndLive seen) {
    return seen.job().equals(job);
  }

  /** Takes a progress below the mark as a new beginning: the last batch's was still shown. */
  RunningBatch seeing(OptionalDouble progress, long nowNanos) {
    boolean begins =
        progress.isPresent() && (mark.isEmpty() || !(progress.getAsDouble() >= mark.getAsDouble()));
    return begins
        ? new RunningBatch(job, sinceNanos, isSeenFromItsStart, nowNanos, progress)
        : this;
  }

  /** Hours to come by the progress; empty while it says too little. */
  OptionalDouble hoursToCome(double progress, long nowNanos) {
    double risen = progress - mark.orElse(progress);
    long elapsed = nowNanos - markNanos;
    return risen >= ENOUGH_PROGRESS && elapsed >= ENOUGH_NANOS
        ? OptionalDouble.of((1 - progress) / risen * elapsed / NANOS_AN_HOUR)
        : OptionalDouble.empty();
  }

  /**
   * Hours to come if it is as long as usual; empty when it is longer already, or was joined late.
   */
  OptionalDouble hoursToComeOf(double usualHours, long nowNanos) {
    double left = usualHours - (nowNanos - sinceNanos) / NANOS_AN_HOUR;
    return isSeenFromItsStart && left > 0 ? OptionalDouble.of(left) : OptionalDouble.empty();
  }
}
