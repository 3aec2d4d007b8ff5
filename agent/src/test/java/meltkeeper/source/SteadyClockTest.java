package meltkeeper.source;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.concurrent.atomic.AtomicLong;
import meltkeeper.protocol.Arrival;
import org.junit.jupiter.api.Test;

class SteadyClockTest {

  private static final long MINUTE = 60_000_000_000L;
  private static final long HOUR = 60 * MINUTE;

  private final AtomicLong wall = new AtomicLong(1_000_000_000L);
  private final AtomicLong monotonic = new AtomicLong(Long.MAX_VALUE - 500);
  private final SteadyClock clock = new SteadyClock(wall::get, monotonic::get);

  @Test
  void wallClock_setBack_movesOnlyTheWallHalf() {
    wall.addAndGet(-700_000_000L);
    monotonic.addAndGet(2_000_000L);

    assertThat(clock.now()).isEqualTo(new Arrival(1_002_000_000L, 300_000_000L));
  }

  @Test
  void steadyTime_isInWholeMicroseconds() {
    monotonic.addAndGet(2_999L);

    assertThat(clock.now().steadyNanos()).isEqualTo(1_000_002_000L);
  }

  @Test
  void computerThatWokeInThePast_followsTheFirstStepForwardAndNoOther() {
    monotonic.set(0);
    SteadyClock woken = SteadyClock.notBefore(HOUR, wall::get, monotonic::get);
    assertThat(woken.now().steadyNanos()).isEqualTo(HOUR);

    monotonic.addAndGet(MINUTE);
    wall.set(9 * HOUR);
    assertThat(woken.now()).isEqualTo(new Arrival(9 * HOUR, 9 * HOUR));

    wall.set(90_000 * HOUR);
    monotonic.addAndGet(MINUTE);
    assertThat(woken.now().steadyNanos()).isEqualTo(9 * HOUR + MINUTE);
    wall.set(0);
    assertThat(woken.now().steadyNanos()).isEqualTo(9 * HOUR + MINUTE);
  }

  @Test
  void computerWhoseClockIsAheadOfTheStore_followsNoStep() {
    monotonic.set(0);
    wall.set(3 * HOUR);
    SteadyClock sure = SteadyClock.notBefore(HOUR, wall::get, monotonic::get);

    wall.set(9 * HOUR);
    assertThat(sure.now()).isEqualTo(new Arrival(3 * HOUR, 9 * HOUR));
  }

  @Test
  void computersOwnClocks_neverGoBack() {
    SteadyClock own = new SteadyClock();
    long last = own.now().steadyNanos();
    for (int i = 0; i < 100_000; i++) {
      long now = own.now().steadyNanos();
      assertThat(now).isGreaterThanOrEqualTo(last);
      last = now;
    }
  }
}
