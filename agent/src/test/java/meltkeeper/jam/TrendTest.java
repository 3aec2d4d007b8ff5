package meltkeeper.jam;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class TrendTest {

  private static final double SPREAD = 0.03;
  private static final long MINUTE = 60_000_000_000L;

  private final Trend trend = new Trend();
  private final Random random = new Random(3);
  private long now;

  private void window(double share) {
    now += MINUTE / 4;
    trend.take(now, share + SPREAD * random.nextGaussian(), SPREAD);
  }

  /**
   * A bore that closes evenly, index 0.5, at 0.3 of the grip at first. Computed apart, in Python,
   * for 60 minutes to closure: slips from 22.932 min on, passes half at 27.730, a tenth at 36.612.
   */
  @ParameterizedTest
  @CsvSource({"10", "60", "240"})
  void evenClosure_atHalfTheFeed_isForetold(double minutesToClosure) {
    double times = minutesToClosure / 60;
    for (int i = 0; i < 40; i++) {
      window(1);
    }
    for (double minute = 22.932 * times; minute < 27.730 * times; minute += 0.25) {
      double radius = 1 - minute / minutesToClosure;
      window(Math.min(1, Math.pow(Math.pow(radius, 2.5) / 0.3, 2)));
    }
    MinutesToStall told = trend.minutesToStall().orElseThrow();
    assertThat((36.612 - 27.730) * times).isBetween(told.low(), told.high());
  }

  @Test
  void feedAsUsual_foretellsNoStallSoon() {
    for (int i = 0; i < 400; i++) {
      window(1);
      trend
          .minutesToStall()
          .ifPresent(told -> assertThat(told.high()).as("window at %d", now).isGreaterThan(10));
    }
  }

  @Test
  void feedThatComesBack_isForgotten() {
    for (int i = 0; i < 20; i++) {
      window(1 - 0.03 * i);
    }
    assertThat(trend.minutesToStall()).isPresent();
    for (int i = 0; i < 400; i++) {
      window(1.2);
    }
    assertThat(trend.minutesToStall()).isEmpty();
  }

  @Test
  void rearmed_knowsNothing() {
    window(1);
    window(0.8);
    window(0.6);
    trend.rearm();
    assertThat(trend.minutesToStall()).isEmpty();
    assertThat(trend.fedWell()).isFalse();
  }
}
