package meltkeeper.source;

import java.time.Instant;
import java.util.concurrent.TimeUnit;
import java.util.function.LongSupplier;
import meltkeeper.protocol.Arrival;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Tells when something arrives, on a clock that never steps: the wall clock as it was when this was
 * made, plus monotonic time since. A wall clock that is set later moves only the wall half of an
 * arrival. The steady half is in whole microseconds (as a recording writes it, so that a replay
 * sees the same), and never decreases. Safe for use by several threads.
 *
 * <p>One step it does take part in: a computer without a clock of its own wakes up in the past, and
 * learns the time later. A clock that began so follows the first step forward, since that time has
 * really passed; whoever measures across it sees a gap.
 */
public final class SteadyClock {

  private static final Logger LOG = LoggerFactory.getLogger(SteadyClock.class);

  private static final long NANOS_PER_MICRO = 1_000;

  /** A wall clock less than this after the last reading may be one that stood still meanwhile. */
  private static final long STOOD_STILL_NANOS = TimeUnit.MINUTES.toNanos(5);

  /** Less than this is no first setting of a clock. */
  private static final long STEP_NANOS = TimeUnit.MINUTES.toNanos(1);

  private final LongSupplier wallNanos;
  private final LongSupplier monotonicNanos;
  private final long monotonicAtStart;
  private volatile Anchor anchor;

  /**
   * What the monotonic time is added to.
   *
   * @param nanos the steady time at the start
   * @param mayBeBehind true while the wall clock may not have been set yet
   */
  private record Anchor(long nanos, boolean mayBeBehind) {}

  /** The computer's own clocks. */
  public SteadyClock() {
    this(SteadyClock::systemWallNanos, System::nanoTime);
  }

  /**
   * Clocks of the caller's choice.
   *
   * @param wallNanos nanoseconds since 1970-01-01T00:00:00Z, may step
   * @param monotonicNanos nanoseconds since any moment, never decreasing, may overflow
   */
  public SteadyClock(LongSupplier wallNanos, LongSupplier monotonicNanos) {
    this(wallNanos, monotonicNanos, new Anchor(wallNanos.getAsLong(), false));
  }

  private SteadyClock(LongSupplier wallNanos, LongSupplier monotonicNanos, Anchor start) {
    this.wallNanos = wallNanos;
    this.monotonicNanos = monotonicNanos;
    this.anchor = start;
    this.monotonicAtStart = monotonicNanos.getAsLong();
  }

  /**
   * The computer's own clocks, the steady one beginning at {@code earliestNanos} when the wall
   * clock is behind it: a computer without a clock of its own wakes up in the past.
   */
  public static SteadyClock notBefore(long earliestNanos) {
    return notBefore(earliestNanos, SteadyClock::systemWallNanos, System::nanoTime);
  }

  /** The same with clocks of the caller's choice. */
  public static SteadyClock notBefore(
      long earliestNanos, LongSupplier wallNanos, LongSupplier monotonicNanos) {
    long wall = wallNanos.getAsLong();
    boolean mayBeBehind =
        earliestNanos == Long.MIN_VALUE || wall < earliestNanos + STOOD_STILL_NANOS;
    return new SteadyClock(
        wallNanos, monotonicNanos, new Anchor(Math.max(earliestNanos, wall), mayBeBehind));
  }

  /** This moment. */
  public Arrival now() {
    long wall = wallNanos.getAsLong();
    long elapsed = monotonicNanos.getAsLong() - monotonicAtStart;
    Anchor from = anchor;
    long step = wall - (from.nanos() + elapsed);
    if (from.mayBeBehind() && step >= STEP_NANOS) {
      from = set(step);
    }
    long steady = from.nanos() + elapsed;
    return new Arrival(steady - Math.floorMod(steady, NANOS_PER_MICRO), wall);
  }

  /** Follows a step, unless another thread has just done so. */
  private synchronized Anchor set(long stepNanos) {
    if (anchor.mayBeBehind()) {
      anchor = new Anchor(anchor.nanos() + stepNanos, false);
      LOG.warn(
          "the computer's clock was set forward by {} min; readings are dated by it from now on",
          TimeUnit.NANOSECONDS.toMinutes(stepNanos));
    }
    return anchor;
  }

  private static long systemWallNanos() {
    Instant now = Instant.now();
    return TimeUnit.SECONDS.toNanos(now.getEpochSecond()) + now.getNano();
  }
}
