package meltkeeper.protocol.gcode;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Totals are sums by hand. Section numbers: NISTIR 6556 (Kramer, Proctor, Messina 2000); the rest:
 * RepRap dialect, common practice, no source.
 */
class TrackerTest {

  private final Told told = new Told();
  private Tracker tracker = new Tracker();

  @Test
  void absoluteFeed_toldAsPlaces_givesTheLastPlaceLessTheFirst() {
    run("M82", "G92 E0", "G1 X1 E2.5", "G1 X2 E4", "G0 X9", "G1 E3.2", "G1 X3 E5");

    assertThat(total()).isCloseTo(5, within(1e-12));
    assertThat(told.all)
        .containsExactly(
            "filament 0 0.0",
            "filament 0 2.5",
            "filament 0 4.0",
            "filament 0 3.2",
            "filament 0 5.0");
  }

  @Test
  void relativeFeed_toldAsLengths_givesTheirSum() {
    run("M83", "G1 X1 E2.5", "G1 X2 E1.5", "G1 E-.8", "G1 X3 E1.8");

    assertThat(total()).isCloseTo(5, within(1e-12));
  }

  @Test
  void distanceMode_rulesFilamentUntilM82OrM83Do() {
    run("G91", "G1 X1 E2", "G1 X1 E2", "G90", "G1 X1 E5");
    assertThat(total()).isEqualTo(5);

    run("M83", "G90", "G1 X1 E2", "M82", "G91", "G1 X1 E8");
    assertThat(total()).isEqualTo(8);
  }

  /** Section 3.5.18: G92 moves nothing, and the distance mode does not matter to it. */
  @ParameterizedTest
  @ValueSource(strings = {"G92 E0", "G92", "G91 G92 E0", "G92 X5 E0"})
  void reset_ofThePlace_feedsNothing(String reset) {
    run("M82", "G92 E0", "G1 X1 E100", reset, "G90", "G1 X2 E1");

    assertThat(total()).isEqualTo(101);
  }

  @Test
  void reset_ofOtherAxes_leavesTheFilamentsPlace() {
    run("M82", "G92 E0", "G1 X1 E100", "G92 X0", "G92.1", "G1 X2 E101");

    assertThat(total()).isEqualTo(101);
  }

  /** Section 3.5.7, its number from memory: G20 is inches; 25.4 mm each by definition. */
  @Test
  void inches_areCountedAsMillimetres() {
    run("G20", "M83", "G1 X1 E1", "G21", "G1 X1 E1");

    assertThat(total()).isCloseTo(26.4, within(1e-12));
  }

  @Test
  void arcs_feedAsStraightMovesDo() {
    run("M83", "G2 X1 Y1 I1 J0 E1.5", "G3 X1 Y1 R2 E1.5", "G0 E1");

    assertThat(total()).isCloseTo(4, within(1e-12));
  }

  /** Section 3.3.7: the motion stays in force; section 3.4: G92 puts it off on its line. */
  @Test
  void bareAxisWords_goOnAsTheLastMove() {
    run("E7", "M83", "G1 X1 E1", "X2 E1", "M92 E420", "T0 E3", "F1800");

    assertThat(total()).isEqualTo(2);
  }

  /** Section 3.8, from memory: units and distance mode come before the move on their line. */
  @Test
  void modes_writtenBehindTheMove_ruleItAllTheSame() {
    run("G1 X1 E1 G20 M83");

    assertThat(total()).isCloseTo(25.4, within(1e-12));
  }

  @Test
  void retractionByFirmware_ofATaughtLength_lowersAndRaisesTheTotal() {
    run("M83", "G1 X1 E10", "M207 S2", "G10", "G10");
    assertThat(total()).isEqualTo(8);

    run("G11", "G11", "G10 L2 P1 X0", "G10 P0 S200");
    assertThat(total()).isEqualTo(10);
  }

  @Test
  void retractionByFirmware_ofAnUntaughtLength_changesNothing() {
    run("M83", "G1 X1 E10", "G10", "G11");

    assertThat(total()).isEqualTo(10);
  }

  @Test
  void hotEnds_haveTotalsOfTheirOwnOnOneCoordinate() {
    run("M82", "G92 E0", "G1 X1 E10", "T1", "G1 X1 E14", "G92 E0", "T0", "G1 X1 E3");

    assertThat(tracker.filamentMillimetres(0)).isEqualTo(13);
    assertThat(tracker.filamentMillimetres(1)).isEqualTo(4);
    assertThat(told.all).contains("filament 1 0.0", "filament 1 4.0", "filament 0 13.0");
  }

  @Test
  void hotEnd_outOfRange_isRejectedAndNotChosen() {
    run("T16", "T-1", "T1.5");

    assertThat(tracker.hotEnd()).isZero();
    assertThat(told.all).hasSize(3).allMatch(what -> what.startsWith("rejected OUT_OF_RANGE"));
  }

  @ParameterizedTest
  @CsvSource({
    "M104 S215, target 0 215.0",
    "M109 S215, target 0 215.0",
    "M109 R180, target 0 180.0",
    "S215 M104, target 0 215.0",
    "M104 T1 S0, target 1 0.0",
    "M106, fan 1.0",
    "M106 S51, fan 0.2",
    "M107, fan 0.0",
    "M73 P25 R120, progress 0.25",
    "M0, job PAUSED",
    "M1 look, job PAUSED",
    "M25, job PAUSED",
    "M24, job PRINTING",
    "M2, job IDLE",
    "M30, job IDLE",
    "M600, notice FILAMENT_CHANGE",
  })
  void command_byItsCode_tellsWhatItDoes(String command, String what) {
    run(command);

    assertThat(told.all).containsExactly(what);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "M104",
        "M140 S60",
        "M106 P1 S255",
        "M107 P1",
        "M30 label.gco",
        "M84",
        "M18",
        "G28",
        "G28 X Y",
        "M105",
        "M27",
        "M114",
        "M155 S2",
        "M117 words",
        "G4 P500",
        "M73 R120",
        "G29",
        "T0",
        ""
      })
  void command_ofNoInterest_tellsNothing(String command) {
    run(command);

    assertThat(told.all).isEmpty();
  }

  @Test
  void hotEndChosen_beforeATarget_isMeantByIt() {
    run("T1", "M104 S200", "M104 T0 S150");

    assertThat(told.all).containsExactly("target 1 200.0", "target 0 150.0");
  }

  @Test
  void pausedJob_layingFilamentAgain_isPrinting() {
    run("M83", "G1 X1 E1", "M0", "G1 E5", "G1 X2", "G1 X3 E1", "M84");

    assertThat(told.jobs()).containsExactly("job PAUSED", "job PRINTING", "job IDLE");
  }

  @ParameterizedTest
  @ValueSource(strings = {"M84 S60", "M84 X", "M18 E"})
  void motors_offLaterOrInPart_endNoJob(String command) {
    run("M24", command);

    assertThat(told.jobs()).containsExactly("job PRINTING");
  }

  @Test
  void firstPlace_farFromTheStart_showsThatTheJobRanAlready() {
    run("G1 X1 E1234.5", "G1 X2 E1236");

    assertThat(total()).isEqualTo(1.5);
  }

  @Test
  void firstPlace_nearTheStart_isFed() {
    run("G1 X1 E12", "G1 X2 E15");

    assertThat(total()).isEqualTo(15);
  }

  @Test
  void feed_thatCannotBe_isRejectedAndNotCounted() {
    run("M82", "G92 E0", "G1 X1 E1", "G1 X2 E99999", "G1 X3 E3");

    assertThat(total()).isEqualTo(3);
    assertThat(told.all)
        .contains("rejected OUT_OF_RANGE a feed of 99998.0 mm; allowed: at most 10000.0");
  }

  @Test
  void reportedPlaces_beforeAnyFeed_areToldAndThenGoneOnFrom() {
    tracker.reportedFilament(0, 100, told);
    tracker.reportedFilament(0, 103, told);
    run("G1 X1 E104", "G1 X1 E106");
    tracker.reportedFilament(0, 500, told);

    assertThat(told.all)
        .containsExactly(
            "filament 0 100.0", "filament 0 103.0", "filament 0 104.0", "filament 0 106.0");
  }

  @Test
  void reportedPlaces_ofChangingHotEnds_areToldApart() {
    tracker.reportedFilament(0, 100, told);
    tracker.reportedFilament(1, 104, told);
    tracker.reportedFilament(0, 109, told);
    tracker.reportedFilament(1, 2, told);
    tracker.reportedFilament(1, 5, told);

    assertThat(told.all)
        .containsExactly(
            "filament 0 100.0",
            "filament 1 4.0",
            "filament 0 105.0",
            "filament 1 4.0",
            "filament 1 7.0");
  }

  @Test
  void restart_forgetsModesAndGoesOnWithTheTotals() {
    run("G20", "M83", "T1", "G1 X1 E1", "M207 S1");
    tracker = tracker.restarted();
    run("G1 X1 E3", "G10", "T1", "G1 X1 E5");

    assertThat(tracker.filamentMillimetres(0)).isEqualTo(3);
    assertThat(tracker.filamentMillimetres(1)).isCloseTo(27.4, within(1e-12));
  }

  @ParameterizedTest(name = "seed {0}")
  @ValueSource(longs = {71, 72, 73, 74, 75, 76})
  void longProgram_inAbsoluteAndRelativeWords_givesTheSameTotals(long seed) {
    Random random = new Random(seed);
    Told toldAbsolute = new Told();
    Told toldRelative = new Told();
    Tracker absolute = new Tracker();
    Tracker relative = new Tracker();
    toldAbsolute.step(absolute, "M82", "G92 E0");
    toldRelative.step(relative, "M83");
    long micrometres = 0;
    long place = 0;
    for (int i = 0; i < 20_000; i++) {
      long length = random.nextInt(10) == 0 ? -random.nextInt(3_000) : random.nextInt(4_000);
      place += length;
      micrometres += length;
      toldAbsolute.step(absolute, "G1 X" + i % 200 + " E" + place / 1000.0);
      toldRelative.step(relative, "G1 X" + i % 200 + " E" + length / 1000.0);
      if (random.nextInt(500) == 0) {
        place = random.nextInt(10_000);
        toldAbsolute.step(absolute, "G92 E" + place / 1000.0);
      }
    }

    double truth = micrometres / 1000.0;
    assertThat(absolute.filamentMillimetres(0)).isCloseTo(truth, within(1e-6));
    assertThat(relative.filamentMillimetres(0)).isCloseTo(truth, within(1e-6));
  }

  private double total() {
    return tracker.filamentMillimetres(0);
  }

  private void run(String... lines) {
    told.step(tracker, lines);
  }
}
