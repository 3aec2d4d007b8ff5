package meltkeeper.protocol.motion;

import static meltkeeper.protocol.motion.Job.STOPPING;
import static meltkeeper.protocol.motion.Job.seconds;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Every expected time is a closed form of uniformly accelerated motion, worked beside it. */
class MoveTimeTest {

  private static final Offset<Double> EXACT = within(1e-9);
  private static final MotionLimits CORNERING = STOPPING.withJunctionDeviation(0.05);

  @Test
  void longMove_takesATrapezoid() {
    // Length over speed, and speed over acceleration for the two ramps: 100/50 + 50/1000.
    assertThat(seconds(STOPPING, "G1 X100 F3000")).isCloseTo(2.05, EXACT);
  }

  @Test
  void shortMove_takesATriangle() {
    // Half of the way up, half down: 2 sqrt(1/1000).
    assertThat(seconds(STOPPING, "G1 X1 F18000")).isCloseTo(2 * Math.sqrt(0.001), EXACT);
  }

  @Test
  void square_withFullStops_takesFourMoves() {
    assertThat(seconds(STOPPING, "G1 X100 F3000", "G1 Y100", "G1 X0", "G1 Y0"))
        .isCloseTo(4 * 2.05, EXACT);
  }

  @Test
  void square_withCorners_losesLessAtEach() {
    // A right angle: R = δ sin 45° / (1 − sin 45°), v = sqrt(a R). A ramp between v and the speed F
    // costs (F − v)² / (2 a F) more than going at F; the square has two from rest and six from v.
    double corner = Math.sqrt(1000 * 0.05 * Math.sqrt(0.5) / (1 - Math.sqrt(0.5)));
    double expected = 4 * 100 / 50.0 + 2 * 50 * 50 / 1e5 + 6 * (50 - corner) * (50 - corner) / 1e5;
    assertThat(seconds(CORNERING, "G1 X100 F3000", "G1 Y100", "G1 X0", "G1 Y0"))
        .isCloseTo(expected, EXACT);
  }

  @Test
  void staircase_withStepsTooShortForFullSpeed_peaksBetweenCorners() {
    // From the corner's speed v up to p and back within s: p² = v² + a s, in 2 (p − v) / a.
    double corner = Math.sqrt(1000 * 0.05 * Math.sqrt(0.5) / (1 - Math.sqrt(0.5)));
    double peak = Math.sqrt(corner * corner + 1000 * 0.5);
    double perStep = 2 * (peak - corner) / 1000;
    double twenty = seconds(CORNERING, staircase(20, 0.5));
    double thirty = seconds(CORNERING, staircase(30, 0.5));
    assertThat((thirty - twenty) / 10).isCloseTo(perStep, EXACT);
    // From rest to v over the first step's way: up to p' with p'² = (v² + 2 a s) / 2, twice.
    double first = Math.sqrt((corner * corner + 2 * 1000 * 0.5) / 2);
    assertThat(twenty).isCloseTo(18 * perStep + 2 * (2 * first - corner) / 1000, EXACT);
  }

  private static List<String> staircase(int steps, double length) {
    List<String> lines = new ArrayList<>(List.of("G91", "G1 F12000"));
    for (int i = 0; i < steps; i++) {
      lines.add("G1 " + (i % 2 == 0 ? "X" : "Y") + length);
    }
    return lines;
  }

  @Test
  void straightLineInAThousandPieces_takesOneMove() {
    List<String> pieces = new ArrayList<>(List.of("G1 F3000"));
    for (int i = 1; i <= 1000; i++) {
      pieces.add(String.format(Locale.ROOT, "G1 X%.3f Y%.3f", i * 0.06, i * 0.08));
    }
    assertThat(seconds(CORNERING, pieces)).isCloseTo(2.05, within(1e-6));
  }

  @Test
  void reversal_isAFullStop() {
    assertThat(seconds(CORNERING, "G1 X100 F3000", "G1 X0")).isCloseTo(2 * 2.05, EXACT);
  }

  @Test
  void slowAxis_limitsTheWholeMove() {
    // 10 mm up at 15 mm/s at most, acceleration 1000: 10/15 + 15/1000.
    assertThat(seconds(STOPPING, "G1 Z10 F30000")).isCloseTo(10 / 15.0 + 0.015, EXACT);
  }

  @Test
  void retraction_isAStopOfItsOwn() {
    // 4 mm of filament at 40 mm/s: 4/40 + 40/1000; the plate stands still meanwhile.
    assertThat(seconds(CORNERING, "G1 X100 F3000", "G1 E-4 F2400", "G1 X200 F3000"))
        .isCloseTo(2 * 2.05 + 0.14, EXACT);
  }

  @Test
  void quarterArc_takesItsLength() {
    double length = Math.PI / 2 * 20;
    assertThat(seconds(CORNERING, "G2 X20 Y-20 I0 J-20 F3000"))
        .isCloseTo(length / 50 + 0.05, EXACT);
    assertThat(seconds(CORNERING, "G2 X20 Y-20 R20 F3000")).isCloseTo(length / 50 + 0.05, EXACT);
    assertThat(seconds(CORNERING, "G3 X20 Y20 R20 F3000")).isCloseTo(length / 50 + 0.05, EXACT);
    assertThat(seconds(CORNERING, "G3 X20 Y20 R-20 F3000"))
        .as("the longer way round")
        .isCloseTo(3 * length / 50 + 0.05, EXACT);
  }

  @Test
  void wholeCircleRising_isAHelix() {
    double length = Math.hypot(2 * Math.PI * 20, 3);
    assertThat(seconds(CORNERING, "G3 Z3 I20 J0 F3000")).isCloseTo(length / 50 + 0.05, EXACT);
  }

  @Test
  void tightArc_isSlowedByItsCentripetalAcceleration() {
    // On a radius of 1 mm: v = sqrt(1000 · 1).
    double speed = Math.sqrt(1000);
    assertThat(seconds(STOPPING, "G3 I1 J0 F18000"))
        .isCloseTo(2 * Math.PI / speed + speed / 1000, EXACT);
  }

  @Test
  void lineIntoItsTangentArc_goesOnWithoutSlowing() {
    double length = 100 + Math.PI / 2 * 20;
    assertThat(seconds(CORNERING, "G1 X100 F3000", "G3 X120 Y20 I0 J20"))
        .isCloseTo(length / 50 + 0.05, within(1e-6));
  }

  @Test
  void feedFactorAndAcceleration_areTheFiles() {
    assertThat(seconds(STOPPING, "M220 S50", "G1 X100 F6000")).isCloseTo(2.05, EXACT);
    assertThat(seconds(STOPPING, "M204 T500", "G1 X100 F3000")).isCloseTo(2.1, EXACT);
    assertThat(seconds(STOPPING, "M203 X25", "G1 X100 F6000")).isCloseTo(4.025, EXACT);
    assertThat(seconds(STOPPING, "M201 X500", "G1 X100 F3000")).isCloseTo(2.1, EXACT);
    assertThat(seconds(STOPPING, "M205 J0.05", "G1 X100 F3000", "G1 Y100", "G1 X0", "G1 Y0"))
        .isEqualTo(seconds(CORNERING, "G1 X100 F3000", "G1 Y100", "G1 X0", "G1 Y0"));
  }

  @Test
  void samePath_toldOtherwise_takesTheSameTime() {
    double told = seconds(CORNERING, "G1 X50 Y10 F3000", "G1 X80 Y70", "G1 X0 Y0");
    assertThat(seconds(CORNERING, "G91", "G1 X50 Y10 F3000", "G1 X30 Y60", "G1 X-80 Y-70"))
        .isCloseTo(told, EXACT);
    assertThat(
            seconds(
                CORNERING, "G92 X10 Y20", "G1 X60 Y30 F3000", "X90 Y90", "G92 X0 Y0", "X-80 Y-70"))
        .isCloseTo(told, EXACT);
    assertThat(
            seconds(
                CORNERING,
                "G20",
                "G1 X1.968503937007874 Y0.3937007874015748 F118.11023622047244",
                "X3.149606299212598 Y2.755905511811024",
                "X0 Y0"))
        .isCloseTo(told, within(1e-7));
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5})
  void moreAcceleration_neverTakesLonger(long seed) {
    List<String> file = anyFile(new Random(seed), 400);
    double before = Double.POSITIVE_INFINITY;
    for (double acceleration : new double[] {100, 300, 1000, 3000, 10_000, 50_000}) {
      double now = seconds(CORNERING.withAcceleration(acceleration), file);
      assertThat(now).as("seed %d, %s mm/s²", seed, acceleration).isLessThanOrEqualTo(before);
      before = now;
    }
  }

  @ParameterizedTest
  @ValueSource(longs = {11, 12, 13})
  void shortLookAhead_neverTakesLessTime_andALongOneLosesNothing(long seed) {
    List<String> file = anyFile(new Random(seed), 400);
    double whole = seconds(CORNERING.withLookAhead(10_000), file);
    assertThat(seconds(CORNERING.withLookAhead(64), file))
        .as("seed %d", seed)
        .isBetween(whole - 1e-9, whole * 1.001);
    List<String> pieces = new ArrayList<>(List.of("G91", "G1 F6000"));
    for (int i = 0; i < 1000; i++) {
      pieces.add("G1 X0.1");
    }
    assertThat(seconds(CORNERING.withLookAhead(1), pieces))
        .isGreaterThan(1.1 * seconds(CORNERING.withLookAhead(500), pieces));
  }

  @ParameterizedTest
  @ValueSource(longs = {21, 22, 23})
  void splittingStraightMoves_changesNothing(long seed) {
    Random random = new Random(seed);
    List<String> whole = new ArrayList<>(List.of("G91", "G1 F6000"));
    List<String> split = new ArrayList<>(List.of("G91", "G1 F6000"));
    for (int i = 0; i < 200; i++) {
      int x = random.nextInt(64) - 32;
      int y = random.nextInt(64) - 32;
      whole.add("G1 X" + x + " Y" + y);
      split.add("G1 X" + x / 4.0 + " Y" + y / 4.0);
      split.add("G1 X" + 3 * x / 4.0 + " Y" + 3 * y / 4.0);
    }
    MotionLimits limits = CORNERING.withLookAhead(10_000);
    assertThat(seconds(limits, split))
        .as("seed %d", seed)
        .isCloseTo(seconds(limits, whole), within(1e-5));
  }

  static List<String> anyFile(Random random, int moves) {
    List<String> lines = new ArrayList<>(List.of("M83"));
    for (int i = 0; i < moves; i++) {
      lines.add(
          String.format(
              Locale.ROOT,
              "G1 X%.3f Y%.3f E%.4f F%d",
              random.nextDouble() * 40,
              random.nextDouble() * 40,
              random.nextInt(5) == 0 ? 0 : random.nextDouble(),
              600 + random.nextInt(12_000)));
    }
    return lines;
  }
}
