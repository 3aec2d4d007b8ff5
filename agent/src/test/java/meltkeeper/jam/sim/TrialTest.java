package meltkeeper.jam.sim;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.stream.LongStream;
import meltkeeper.jam.score.Alarms;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** A small fixed case of the benchmark: the same seeds, the same alarms. */
class TrialTest {

  private static final long SEED = 5_000_000;

  @Test
  void healthyPrinters_neverAlarmWithAnEncoder() {
    for (long seed = SEED; seed < SEED + 4; seed++) {
      Trial trial = Trial.of(seed, Fault.NONE, 6);
      assertThat(trial.watchedWith(Signal.ENCODER).before(Double.POSITIVE_INFINITY))
          .as("seed %d", seed)
          .isZero();
      assertThat(trial.blindSecondsWith(Signal.TEMPERATURE))
          .as("seed %d", seed)
          .isGreaterThan(0.8 * trial.truth().printingSeconds());
      assertThat(trial.blindSecondsWith(Signal.ENCODER)).as("seed %d", seed).isZero();
    }
  }

  @ParameterizedTest
  @EnumSource(
      value = Fault.class,
      names = {"CLOG", "BLOCK", "RUNOUT", "TANGLE"})
  void fault_withAnEncoder_isCalledWithinAMinuteOfTheStop(Fault fault) {
    List<Trial> trials =
        LongStream.range(SEED, SEED + 6).mapToObj(seed -> Trial.of(seed, fault, 1)).toList();
    Score score = Score.of(trials, t -> t.watchedWith(Signal.ENCODER));
    assertThat(score.faults()).isGreaterThan(3);
    assertThat(score.within(60)).as("seeds from %d", SEED).isEqualTo(1);
  }

  @Test
  void blockOnAPrinterOfAnotherMake_isCalledWithoutAnEncoder_andNothingBefore() {
    List<Trial> trials =
        LongStream.range(SEED, SEED + 6)
            .mapToObj(seed -> Trial.ofDemo(seed, Fault.BLOCK, 2))
            .toList();
    Score score = Score.of(trials, t -> t.watchedWith(Signal.NO_ENCODER));
    assertThat(score.faults()).isEqualTo(trials.size());
    assertThat(score.within(600)).as("seeds from %d", SEED).isEqualTo(1);
    for (Trial trial : trials) {
      for (Signal signal : List.of(Signal.ENCODER, Signal.NO_ENCODER)) {
        assertThat(trial.watchedWith(signal).before(trial.truth().onsetSeconds()))
            .as("seeds from %d", SEED)
            .isZero();
      }
    }
  }

  @Test
  void alarms_withinHalfAnHour_areOne() {
    Alarms alarms = new Alarms();
    for (double at : new double[] {100, 900, 4000}) {
      alarms.at(at, true);
      alarms.at(at + 10, false);
    }
    assertThat(alarms.before(5000)).isEqualTo(2);
    assertThat(alarms.firstFrom(101)).hasValue(900);
  }
}
