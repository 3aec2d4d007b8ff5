package meltkeeper.source;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.concurrent.atomic.AtomicLong;
import meltkeeper.protocol.Arrival;
import org.junit.jupiter.api.Test;

class SteadyClockTest {

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
