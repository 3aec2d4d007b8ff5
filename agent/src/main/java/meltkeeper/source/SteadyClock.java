package meltkeeper.source;

import java.time.Instant;
import java.util.concurrent.TimeUnit;
import java.util.function.LongSupplier;
import meltkeeper.protocol.Arrival;

/**
 * Tells when something arrives, on a clock that never steps: the wall clock as it was when this was
 * made, plus monotonic time since. A wall clock that is set later moves only the wall half of an
 * arrival. The steady half is in whole microseconds (as a recording writes it, so that a replay
 * sees the same), and never decreases. Safe for use by several threads.
 */
public final class SteadyClock {

  private static final long NANOS_PER_MICRO = 1_000;

  private final LongSupplier wallNanos;
  private final LongSupplier monotonicNanos;
  private final long wallAtStart;
  private final long monotonicAtStart;

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
    this(wallNanos, monotonicNanos, wallNanos.getAsLong());
  }

  private SteadyClock(LongSupplier wallNanos, LongSupplier monotonicNanos, long startNanos) {
    this.wallNanos = wallNanos;
    this.monotonicNanos = monotonicNanos;
    this.wallAtStart = startNanos;
    this.monotonicAtStart = monotonicNanos.getAsLong();
  }

  /**
   * The computer's own clocks, the steady one beginning at {@code earliestNanos} when the wall
   * clock is behind it: a computer without a clock of its own wakes up in the past.
   */
  public static SteadyClock notBefore(long earliestNanos) {
    return new SteadyClock(
        SteadyClock::systemWallNanos, System::nanoTime, Math.max(earliestNanos, systemWallNanos()));
  }

  /** This moment. */
  public Arrival now() {
    long steady = wallAtStart + (monotonicNanos.getAsLong() - monotonicAtStart);
    return new Arrival(steady - Math.floorMod(steady, NANOS_PER_MICRO), wallNanos.getAsLong());
  }

  private static long systemWallNanos() {
    Instant now = Instant.now();
    return TimeUnit.SECONDS.toNanos(now.getEpochSecond()) + now.getNano();
  }
}
