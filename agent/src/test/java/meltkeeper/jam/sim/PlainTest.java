package meltkeeper.jam.sim;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class PlainTest {

  private static final long SEED = 5_000_004;

  @ParameterizedTest
  @EnumSource(Way.class)
  void way_fromWaryToDeaf_callsNoMoreAndNoSooner(Way way) {
    Trial trial = Trial.of(SEED, Fault.BLOCK, 1);
    double before = 0;
    for (int i = 0; i < way.limits(); i++) {
      double first =
          trial
              .plain()
              .of(way, i)
              .firstFrom(trial.truth().onsetSeconds())
              .orElse(Double.POSITIVE_INFINITY);
      assertThat(first).as("seed %d, limit %s", SEED, way.limit(i)).isGreaterThanOrEqualTo(before);
      before = first;
    }
  }

  @Test
  void runoutSwitch_knowsOfRunoutsAlone() {
    Trial runout = Trial.of(SEED, Fault.RUNOUT, 1);
    assertThat(runout.runoutSwitch().firstFrom(0)).hasValue(runout.truth().onsetSeconds());
    assertThat(Trial.of(SEED, Fault.BLOCK, 1).runoutSwitch().firstFrom(0)).isEmpty();
  }
}
