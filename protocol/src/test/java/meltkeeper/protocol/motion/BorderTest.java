package meltkeeper.protocol.motion;

import static meltkeeper.protocol.motion.Job.STOPPING;
import static meltkeeper.protocol.motion.Job.seconds;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import meltkeeper.protocol.Fault;
import meltkeeper.protocol.motion.Job.Stretch;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Numbers that no printer can follow, and lines that say too little. */
class BorderTest {

  private static final String HUGE = "9".repeat(300);

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "G1 X10001 | X: found \"10001.0\"; allowed: a place up to 10000 mm to either side of 0",
        "G1 E2000000000 | E: found \"2.0E9\"; allowed: a place up to 1000000000 mm to either side of 0",
        "G92 Z-20000 | Z: found \"-20000.0\"; allowed: a place up to 10000 mm to either side of 0",
        "G1 X Y5 | X: found \"G1 X Y5\"; allowed: a number behind the letter",
        "G2 X5 Y5 | arc: found \"G2 X5 Y5\"; allowed: a radius R, or a centre I, J as far from the end as from the start",
        "G2 X5 I20 | arc: found \"G2 X5 I20\"; allowed: a radius R, or a centre I, J as far from the end as from the start",
        "G2 X5 R20000 | arc: found \"G2 X5 R20000\"; allowed: I, J and R up to 10000 mm",
        "M104 S601 | target: found \"601.0\"; allowed: 0 to 600 °C",
        "M109 S200 T16 | T: found \"16.0\"; allowed: a hot end of 0 to 15"
      })
  void lineThatCannotBeFollowed_isAFaultAtItsLine_andLeftOut(String line, String fault) {
    Job job = Job.of(STOPPING, "G1 X100 F3000", line, "G1 X200");

    assertThat(job.estimate.faults())
        .extracting(Fault::toString)
        .containsExactly("line 2: " + fault);
    // Two moves of 100 mm, which stop between only where something stops them: 200/50 + 50/1000.
    assertThat(job.estimate.seconds()).isCloseTo(4.05, within(1e-9));
  }

  @ParameterizedTest
  @ValueSource(strings = {"X", "Y-", "Z", "E", "I5 J", "R", "F"})
  void hugeNumber_onAMove_leavesEverythingFinite(String words) {
    Job job =
        Job.of(
            STOPPING,
            "G2 X1 Y1 " + words + HUGE,
            "G1 X1 " + words.replaceAll("[IJR].*", "Z") + HUGE,
            "G91",
            "G1 X1 E1 F600",
            "G1 E-1");

    assertThat(job.estimate.seconds()).isBetween(0.1, 3.0);
    assertThat(job.estimate.filamentMillimetres().values()).allMatch(Double::isFinite);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "G4 S99999999999999999999",
        "G1 X5 F0.000000001",
        "M204 T0.00000000000001",
        "M203 X0.0000000000001",
        "M220 S0.00000000000001"
      })
  void jobWithoutAnEnd_isReckonedToTheLongest(String line) {
    Job job = Job.of(STOPPING, "M104 S200", "G1 F3000", line, "G1 X200", "G4 S1000");

    assertThat(job.estimate.seconds()).isEqualTo(JobEstimator.LONGEST_SECONDS);
    assertThat(job.stretches.stream().mapToDouble(Stretch::seconds).sum())
        .isCloseTo(JobEstimator.LONGEST_SECONDS, within(1e-3));
  }

  @Test
  void speedOfZero_keepsTheOneBefore() {
    assertThat(seconds(STOPPING, "G1 X100 F3000", "G1 F0", "G1 Y100")).isCloseTo(4.1, within(1e-9));
  }

  @ParameterizedTest
  @ValueSource(strings = {"M400", "G4 P0", "T1"})
  void lineThatWaits_amidAStraightLine_stopsIt(String line) {
    assertThat(seconds(STOPPING, "G1 X50 F3000", line, "G1 X100")).isCloseTo(2.1, within(1e-9));
  }

  @Test
  void hotEndSwitchedOff_coolsOnBehindTheEnd() {
    Job job = Job.of(STOPPING, "M109 S125", "M104 S0");

    // 100 K at 2 K/s and at 1 K/s.
    assertThat(job.stretches)
        .containsExactly(new Stretch(0, 25, 125, 50), new Stretch(0, 125, 25, 100));
    assertThat(job.estimate.seconds()).isCloseTo(50, within(1e-9));
    assertThat(job.estimate.notes()).isEmpty();
  }

  @Test
  void hotEndLeftOn_isTold() {
    assertThat(Job.of(STOPPING, "M109 S125").estimate.notes())
        .containsExactly("hot end 0 is left on at 125.0 °C at the end");
  }

  @Test
  void waitWithoutATarget_isForTheOneThatStands() {
    assertThat(seconds(STOPPING, "M104 S225", "G4 S30", "M109")).isCloseTo(100, within(1e-9));
  }

  @Test
  void filamentToldRelatively_overALongJob_isNeverTooFar() {
    List<String> lines = new ArrayList<>(List.of("M83", "G1 F6000"));
    lines.addAll(Collections.nCopies(2000, "G1 E5000"));

    Job job = Job.of(STOPPING, lines);

    assertThat(job.estimate.faults()).isEmpty();
    assertThat(job.estimate.filamentMillimetres()).containsEntry(0, 1e7);
  }

  @Test
  void manyTargetsWithoutMoves_andManyFaults_areBounded() {
    List<String> lines = new ArrayList<>(List.of("G1 X100 F3000"));
    for (int i = 0; i < 5000; i++) {
      lines.add("M104 S" + (200 + i % 2));
      lines.add("M104 S" + (1000 + i));
    }
    lines.add("M104 S0");
    Job job = Job.of(STOPPING, lines);

    assertThat(job.estimate.seconds()).isCloseTo(2.05, within(1e-9));
    assertThat(job.estimate.faults()).hasSize(20);
    assertThat(job.estimate.notes()).hasSize(1);
  }
}
