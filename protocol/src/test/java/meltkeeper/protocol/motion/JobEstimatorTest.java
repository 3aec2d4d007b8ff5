package meltkeeper.protocol.motion;

import static meltkeeper.protocol.motion.Job.STOPPING;
import static meltkeeper.protocol.motion.Job.seconds;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import meltkeeper.protocol.Fault;
import meltkeeper.protocol.Payload;
import meltkeeper.protocol.motion.Job.Stretch;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class JobEstimatorTest {

  @Test
  void waitingForHeat_takesTheWayOverTheRate_andHoldsThen() {
    Job job = Job.of(STOPPING, "M109 S225", "G4 S10", "G4 P500");
    // From 25 to 225 °C at 2 K/s.
    assertThat(job.estimate.seconds()).isCloseTo(110.5, within(1e-9));
    assertThat(job.stretches)
        .containsExactly(new Stretch(0, 25, 225, 100), new Stretch(0, 225, 225, 10.5));
    assertThat(job.estimate.hottestCelsius()).isEqualTo(225);
  }

  @Test
  void heatingWithoutWaiting_goesOnWhilePrinting() {
    Job job = Job.of(STOPPING, "M104 S225", "G4 S40", "M104 S105", "G4 S100");
    assertThat(job.estimate.seconds()).isCloseTo(140, within(1e-9));
    assertThat(job.stretches)
        .containsExactly(new Stretch(0, 25, 105, 40), new Stretch(0, 105, 105, 100));
  }

  @Test
  void newTargetBetweenMoves_stopsNothing() {
    double without = seconds(STOPPING, "G1 X50 F3000", "G1 X100");
    Job job = Job.of(STOPPING, "G1 X50 F3000", "M104 S215", "G1 X100", "G4 S200");
    assertThat(job.estimate.seconds()).isCloseTo(without + 200, within(1e-9));
    double heated =
        job.stretches.stream().filter(s -> s.until() > 25).mapToDouble(Stretch::seconds).sum();
    // The second half of a move of 2.05 s.
    assertThat(heated).isCloseTo(200 + without / 2, within(1e-9));
  }

  @Test
  void cooling_isWaitedForOnlyWhenAskedFor() {
    assertThat(seconds(STOPPING, "M109 S225", "M109 S205")).isCloseTo(100, within(1e-9));
    assertThat(seconds(STOPPING, "M109 S225", "M109 R205")).isCloseTo(120, within(1e-9));
  }

  @Test
  void plate_heatsBesideTheHotEnd() {
    // 35 K at 0.5 K/s alone; within the 100 s of the hot end when begun before.
    assertThat(seconds(STOPPING, "M190 S60")).isCloseTo(70, within(1e-9));
    assertThat(seconds(STOPPING, "M140 S60", "M109 S225", "M190 S60")).isCloseTo(100, within(1e-9));
  }

  @Test
  void twoHotEnds_haveHeatAndFilamentOfTheirOwn() {
    Job job =
        Job.of(
            STOPPING,
            "M109 S225 T0",
            "M109 S125 T1",
            "T1",
            "M83",
            "G1 X10 E2 F600",
            "T0",
            "G1 X20 E3",
            "G1 E-1");
    assertThat(job.estimate.filamentMillimetres()).containsEntry(0, 2.0).containsEntry(1, 2.0);
    assertThat(job.stretches).extracting(Stretch::hotEnd).contains(0, 1);
    assertThat(job.estimate.layingSeconds()).isLessThan(job.estimate.seconds());
  }

  @Test
  void homing_takesItsTime_andIsAtTheOrigin() {
    assertThat(seconds(STOPPING, "G1 X100 F3000", "G28", "G1 X100"))
        .isCloseTo(2.05 + 20 + 2.05, within(1e-9));
  }

  @Test
  void whatIsUnknownOrBroken_isLeftOut_andTold() {
    Job job = Job.of(STOPPING, "G29", "M999", "G1 X1#2", "G1 X100 F3000", "M104 S900");
    assertThat(job.estimate.seconds()).isCloseTo(2.05, within(1e-9));
    assertThat(job.estimate.notes())
        .anyMatch(note -> note.contains("G29, M999"))
        .anyMatch(note -> note.startsWith("2 lines could not be read"));
    assertThat(job.estimate.faults()).extracting(Fault::where).containsExactly("line 3", "line 5");
  }

  @Test
  void moveBeforeAnySpeed_isTakenAtAnAssumedOne_andTold() {
    Job job = Job.of(STOPPING, "G1 X100");
    assertThat(job.estimate.seconds()).isCloseTo(100 / 25.0 + 0.025, within(1e-9));
    assertThat(job.estimate.notes()).anyMatch(note -> note.contains("25.0 mm/s"));
  }

  @ParameterizedTest
  @ValueSource(longs = {31, 32, 33, 34})
  void anyBytes_areSurvived(long seed) {
    Random random = new Random(seed);
    JobEstimator estimator = new JobEstimator(MotionLimits.DEFAULT, (h, a, b, s) -> {});
    String letters = "GMXYZEFIJRSTP0123456789.-+ ;*#(\u0000";
    for (int i = 0; i < 20_000; i++) {
      byte[] line = new byte[random.nextInt(40)];
      for (int k = 0; k < line.length; k++) {
        line[k] = (byte) letters.charAt(random.nextInt(letters.length()));
      }
      estimator.accept(Payload.of(line), i + 1);
    }
    JobEstimate estimate = estimator.finish();
    assertThat(estimate.seconds()).as("seed %d", seed).isNotNaN().isGreaterThanOrEqualTo(0);
    assertThat(estimate.layingSeconds()).isNotNaN();
  }
}
