package meltkeeper.ledger;

import static org.assertj.core.api.Assertions.assertThat;

import meltkeeper.protocol.JobState;
import org.junit.jupiter.api.Test;

/** What was fed is the rise of the high-water mark; printing and idling follow from it. */
class FilamentCreditTest {

  @Test
  void retraction_isNotFedTwice() {
    Course course =
        Course.began().commanded(0, 100).commanded(1, 94).commanded(2, 100).commanded(3, 103);

    assertThat(course.total().commandedMicrometres()).isEqualTo(3000);
  }

  @Test
  void fallByMoreThan50Millimetres_isARestart() {
    Course course = Course.began().commanded(0, 500).commanded(2, 449).commanded(4, 460);

    assertThat(course.total().commandedMicrometres()).isEqualTo(11_000);
  }

  @Test
  void fallBy50Millimetres_isNotYetARestart() {
    Course course = Course.began().commanded(0, 500).commanded(2, 450).commanded(4, 510);

    assertThat(course.total().commandedMicrometres()).isEqualTo(10_000);
  }

  @Test
  void fallToNearZero_isARestart() {
    Course course = Course.began().measured(0, 30).measured(2, 0.2).measured(4, 10.2);

    assertThat(course.total().measuredMicrometres()).isEqualTo(10_000);
  }

  @Test
  void gainAcrossAGap_counts() {
    Course course = Course.began().commanded(0, 100).commanded(7200, 1100);

    assertThat(course.total().commandedMicrometres()).isEqualTo(1_000_000);
  }

  @Test
  void manySmallSteps_telescopeWithoutRounding() {
    Course course = Course.began();
    for (int i = 0; i <= 100_000; i++) {
      course.commanded(i * 0.1, i / 3.0);
    }

    assertThat(course.total().commandedMicrometres()).isEqualTo(Math.round(100_000_000 / 3.0));
  }

  @Test
  void printing_byMappedState_holdsUntilTheNextReading() {
    Course course =
        Course.began()
            .job(0, JobState.IDLE)
            .celsius(0, 30)
            .job(10, JobState.PRINTING)
            .celsius(20, 200)
            .celsius(40, 200)
            .job(50, JobState.PAUSED)
            .celsius(60, 200);

    assertThat(course.total().printingNanos()).isEqualTo(Course.nanos(40));
  }

  @Test
  void printing_acrossAGap_isNotCounted() {
    Course course =
        Course.began().job(0, JobState.PRINTING).celsius(0, 200).celsius(10, 200).celsius(600, 200);

    assertThat(course.total().printingNanos()).isEqualTo(Course.nanos(10));
  }

  @Test
  void printing_withoutAState_isFilamentRisingWithinTheLastMinute() {
    Course course = Course.began().commanded(0, 0);
    for (int i = 0; i <= 300; i++) {
      course.celsius(i, 200);
      if (i >= 100 && i <= 150) {
        course.commanded(i, i);
      }
    }

    // First rise seen at 100 s, last at 150 s and 60 s of grace.
    assertThat(course.total().printingNanos()).isEqualTo(Course.nanos(110));
  }

  @Test
  void idle_isHotTimeBeyondAMinuteWithoutFeeding() {
    Course course = Course.began().commanded(0, 0).commanded(1, 5).plateau(2, 302, 2, 200);

    assertThat(course.total().idleNanos()).isEqualTo(Course.nanos(302 - 61));
    assertThat(course.hotSeconds()).isEqualTo(300);
  }
}
