package meltkeeper.jam.score;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import meltkeeper.protocol.HotEnd;
import org.junit.jupiter.api.Test;

class LimitScoreTest {

  private static final HotEnd HERON = HotEnd.first("heron");
  private static final double STALL = 100_000;
  private static final KnownJam JAM =
      new KnownJam(HERON, STALL - 7200, STALL - 60, STALL, STALL + 1800);

  /** A fault that was called so many minutes before the stall. */
  static Call called(double minutesBefore) {
    return new Call(JAM, OptionalDouble.of(STALL - 60 * minutesBefore));
  }

  static final Call MISSED = new Call(JAM, OptionalDouble.empty());

  /** Leads of a made-up score, its median and shares reckoned by hand. */
  @Test
  void scoreOfTwentyFaults_isReckonedByHand() {
    List<Call> calls = new ArrayList<>(List.of(MISSED, called(-2)));
    for (int minutes :
        new int[] {2, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16, 18, 20, 25, 30}) {
      calls.add(called(minutes));
    }
    LimitScore score = new LimitScore(1000, calls, 3, 4000);

    assertThat(score.warned()).isEqualTo(18);
    assertThat(score.leadMinutes(0.5)).hasValue(10.5);
    assertThat(score.leadMinutes(0.1).orElseThrow()).isCloseTo(1.8, within(1e-9));
    assertThat(score.calledAtOnce()).isEqualTo(18);
    assertThat(score.calledSoon()).as("the late one came 3 min after the stop").isEqualTo(19);
    assertThat(score.falseAlarmsPer1000Hours()).isEqualTo(0.75);
    assertThat(score.boundsPer1000Hours().low()).isCloseTo(0.15467, within(5e-6));
    assertThat(score.boundsPer1000Hours().high()).isCloseTo(2.19182, within(5e-6));
  }

  /** 2996 h without an alarm bear out one in 1000 h: -ln 0.05 = 2.9957. */
  @Test
  void hoursWithoutAnAlarm_bearALimitOutFromThreeTimesItsIntervalOn() {
    assertThat(new LimitScore(1000, List.of(), 0, 2995).isShown()).isFalse();
    assertThat(new LimitScore(1000, List.of(), 0, 2996).isShown()).isTrue();
    assertThat(new LimitScore(1000, List.of(), 5, 1000).isNoisierThanWanted()).isTrue();
    assertThat(new LimitScore(1000, List.of(), 3, 1000).isNoisierThanWanted()).isFalse();
  }

  @Test
  void adviceOfAFewJams_isTheQuietestLimitThatLosesNothing_andSaysThatTheyAreFew() {
    Advice advice =
        Advice.of(
            List.of(
                new LimitScore(100, List.of(called(12), called(9)), 0, 40),
                new LimitScore(1000, List.of(called(10), called(8)), 0, 40),
                new LimitScore(3000, List.of(called(9), MISSED), 0, 40),
                new LimitScore(10_000, List.of(called(1), MISSED), 0, 40)));
    assertThat(advice.wantedHours()).hasValue(1000);
    assertThat(advice.because())
        .isEqualTo(
            "1000h fits best of those tried, being the quietest that catches as much: it warns of"
                + " 2 of 2 jams before the stall, half of them by 9.0 min or more, and has called 2"
                + " within 5 min of it. 2 known jams: that is anything from 16 % to 100 % of jams"
                + " like these warned of (95 %). No false alarm in 40 printing hours outside of"
                + " jams shows at most 74.9 in 1000 h (95 %): too few hours to bear out 1000h,"
                + " which takes 2996 h without any.");
  }

  @Test
  void adviceOfALimitThatIsTooNoisy_passesItOver() {
    Advice advice =
        Advice.of(
            List.of(
                new LimitScore(100, List.of(called(12)), 40, 1000),
                new LimitScore(300, List.of(called(5)), 3, 1000)));
    assertThat(advice.wantedHours()).hasValue(300);
    assertThat(Advice.of(List.of(new LimitScore(100, List.of(called(12)), 40, 1000))).because())
        .startsWith("100h is the quietest of those tried, and still gives more false alarms");
  }

  @Test
  void adviceWithoutJamsOrWithoutPrinting_namesNoLimit() {
    Advice healthy = Advice.of(List.of(new LimitScore(1000, List.of(), 0, 3000)));
    assertThat(healthy.wantedHours()).isEmpty();
    assertThat(healthy.because())
        .isEqualTo(
            "No jam is noted, so nothing tells what a limit would miss. No false alarm in 3000"
                + " printing hours outside of jams shows at most 1.0 in 1000 h (95 %): 1000h is"
                + " borne out.");
    assertThat(Advice.of(List.of(new LimitScore(1000, List.of(called(1)), 0, 0))).because())
        .startsWith("Nothing can be said");
    assertThat(Advice.of(List.of(new LimitScore(1000, List.of(MISSED), 0, 10))).because())
        .startsWith("No limit tried calls any of these jams");
  }
}
