package meltkeeper.ledger;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.OptionalLong;
import meltkeeper.protocol.Reading;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Gaps in the telemetry: bridged, unobserved, or neither. */
class GapTest {

  private static final double HOUR = 3600;

  private static Course hotForAMinute() {
    return Course.began().plateau(0, 60, 2, 220);
  }

  @Test
  void gap_hotAtBothEnds_isBridged() {
    Course course = hotForAMinute().celsius(60 + HOUR, 220);

    assertThat(course.hotSeconds()).isEqualTo(60 + HOUR);
    assertThat(course.total().bridgedNanos()).isEqualTo(Course.nanos(HOUR));
    assertThat(course.total().unobservedNanos()).isZero();
  }

  @Test
  void gap_bridged_followsTheStraightLine() {
    Course course = hotForAMinute().celsius(60 + HOUR, 230);

    assertThat(course.in(220)).isEqualTo(60 + HOUR / 2);
    assertThat(course.in(225)).isEqualTo(HOUR / 2);
  }

  @ParameterizedTest
  @CsvSource({"43199,43199,0", "43200,0,43200", "90000,0,90000"})
  void gap_fromTwelveHoursOn_isUnobserved(double gap, double bridged, double unobserved) {
    Course course = hotForAMinute().celsius(60 + gap, 220);

    assertThat(course.total().bridgedNanos()).isEqualTo(Course.nanos(bridged));
    assertThat(course.total().unobservedNanos()).isEqualTo(Course.nanos(unobserved));
  }

  @ParameterizedTest
  @CsvSource({"30,0", "31,31"})
  void gapLimit_ofAFastSource_isHalfAMinute(double interval, double bridged) {
    Course course = hotForAMinute().celsius(60 + interval, 220);

    assertThat(course.hotSeconds()).isEqualTo(60 + interval);
    assertThat(course.total().bridgedNanos()).isEqualTo(Course.nanos(bridged));
  }

  @Test
  void gapLimit_ofASlowSource_isFiveTimesItsUsualPeriod() {
    Course within = Course.began().plateau(0, 600, 60, 220).celsius(900, 220);
    Course beyond = Course.began().plateau(0, 600, 60, 220).celsius(901, 220);

    assertThat(within.total().bridgedNanos()).isZero();
    assertThat(beyond.total().bridgedNanos()).isEqualTo(Course.nanos(301));
  }

  @Test
  void gapLimit_asConfigured_isKept() {
    Course course =
        Course.with(new Limits(150, OptionalLong.of(Course.nanos(5))))
            .celsius(0, 220)
            .celsius(6, 220);

    assertThat(course.total().bridgedNanos()).isEqualTo(Course.nanos(6));
  }

  @Test
  void gap_withATargetOffAtItsBeginning_isUnobserved() {
    Course course = hotForAMinute().target(60, 0).celsius(60 + HOUR, 220);

    assertThat(course.hotSeconds()).isEqualTo(60);
    assertThat(course.total().unobservedNanos()).isEqualTo(Course.nanos(HOUR));
  }

  @Test
  void gap_withATargetOffWithin_isUnobserved() {
    Course course = hotForAMinute().target(500, 150).target(600, 220).celsius(60 + HOUR, 220);

    assertThat(course.total().bridgedNanos()).isZero();
    assertThat(course.total().unobservedNanos()).isEqualTo(Course.nanos(HOUR));
  }

  @Test
  void gap_withATargetOffOnlyAtItsEnd_isBridged() {
    Course course = hotForAMinute().target(60 + HOUR, 0).celsius(60 + HOUR, 220);

    assertThat(course.total().bridgedNanos()).isEqualTo(Course.nanos(HOUR));
  }

  @Test
  void gap_withARestart_isUnobserved() {
    Course byNotice = hotForAMinute().restarted(3000).celsius(60 + HOUR, 220);
    Course byTotal =
        hotForAMinute().commanded(60, 4000).commanded(60 + HOUR, 0.5).celsius(60 + HOUR, 220);

    assertThat(byNotice.total().unobservedNanos()).isEqualTo(Course.nanos(HOUR));
    assertThat(byTotal.total().unobservedNanos()).isEqualTo(Course.nanos(HOUR));
  }

  @Test
  void gap_withARetainedColdReading_isUnobserved() {
    Reading retained = new Reading.HotEndTemperature(Course.arriving(3000).asRetained(), 31);
    Course course = hotForAMinute().tell(retained).celsius(60 + HOUR, 220);

    assertThat(course.total().unobservedNanos()).isEqualTo(Course.nanos(HOUR));
    assertThat(course.count(Verdict.RETAINED)).isEqualTo(1);
  }

  @ParameterizedTest
  @CsvSource({"220,30", "30,220"})
  void gap_hotAtOneEnd_isUnobserved(double before, double after) {
    Course course = Course.began().plateau(0, 60, 2, before).celsius(60 + HOUR, after);

    assertThat(course.total().unobservedNanos()).isEqualTo(Course.nanos(HOUR));
    assertThat(course.total().bridgedNanos()).isZero();
  }

  @Test
  void gap_coldAtBothEnds_isNeither() {
    Course course =
        Course.began()
            .plateau(0, 60, 2, 30)
            .commanded(60, 100)
            .celsius(60 + HOUR, 30)
            .commanded(60 + HOUR, 100);

    assertThat(course.total()).isEqualTo(Tally.NONE);
  }

  @Test
  void gap_coldAtBothEndsButFed_isUnobserved() {
    Course toldBefore =
        Course.began()
            .commanded(0, 100)
            .plateau(0, 60, 2, 30)
            .commanded(60 + HOUR, 900)
            .celsius(60 + HOUR, 30);
    Course toldAfter =
        Course.began()
            .commanded(0, 100)
            .plateau(0, 60, 2, 30)
            .celsius(60 + HOUR, 30)
            .commanded(60.2 + HOUR, 900);

    assertThat(toldBefore.total().unobservedNanos()).isEqualTo(Course.nanos(HOUR));
    assertThat(toldAfter.total().unobservedNanos()).isEqualTo(Course.nanos(HOUR));
    assertThat(toldAfter.total().commandedMicrometres()).isEqualTo(800_000);
  }
}
