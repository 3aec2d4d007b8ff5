package meltkeeper.demo;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Map;
import org.junit.jupiter.api.Test;

class HotTimeTest {

  private static final long SECOND = 1_000_000_000;

  /** Source: closed form, a ramp spends its time evenly over the kelvins it crosses. */
  @Test
  void ramp_throughTheThreshold_countsOnlyWhatIsAbove() {
    HotTime time = new HotTime(150);
    time.to(0, 140);
    time.to(20 * SECOND, 160);
    assertThat(time.secondsByBand()).isEqualTo(Map.of(150, 5.0, 155, 5.0));
  }

  @Test
  void plateau_onAnEdge_belongsToTheBandAbove() {
    HotTime time = new HotTime(150);
    time.to(0, 225);
    time.to(20 * SECOND, 225);
    assertThat(time.secondsByBand()).isEqualTo(Map.of(225, 20.0));
  }

  @Test
  void plateau_atTheThreshold_isNotHot() {
    HotTime time = new HotTime(150);
    time.to(0, 150);
    time.to(20 * SECOND, 150);
    assertThat(time.seconds()).isZero();
  }
}
