package meltkeeper.ledger;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import java.util.List;
import java.util.OptionalLong;
import java.util.Random;
import java.util.TreeSet;
import meltkeeper.part.Exposure;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Hot time against closed forms of piecewise linear temperature. */
class TemperatureCreditTest {

  /** The largest relative error allowed against a closed form. */
  private static final double TOLERANCE = 1e-4;

  @Test
  void ramp_acrossBands_givesEachBandItsShareExactly() {
    // Closed form: at 1 K/s each 5 K band holds 5 s; from 200 to 230 in 30 s.
    Course course = Course.began().celsius(0, 200).celsius(30, 230);

    for (int band = 200; band < 230; band += 5) {
      assertThat(course.total().exposure().in(band).nanos()).isEqualTo(5_000_000_000L);
    }
    assertThat(course.total().exposure().bands()).hasSize(6);
  }

  @Test
  void ramp_throughTheThreshold_isHotAboveItOnly() {
    // Closed form: from 100 to 200 in 20 s, above 150 for the last 10 s.
    assertThat(Course.began().celsius(0, 100).celsius(20, 200).hotSeconds()).isEqualTo(10);
    assertThat(Course.began().celsius(0, 200).celsius(20, 100).hotSeconds()).isEqualTo(10);
  }

  @Test
  void threshold_offTheBandEdges_cutsItsBand() {
    // Closed form: threshold 152; at 1 K/s from 145 to 160 the band 150-155 is hot for 3 s.
    Course course =
        Course.with(new Limits(152, OptionalLong.empty())).celsius(0, 145).celsius(15, 160);

    assertThat(course.in(150)).isEqualTo(3);
    assertThat(course.in(155)).isEqualTo(5);
    assertThat(course.hotSeconds()).isEqualTo(8);
  }

  @ParameterizedTest
  @CsvSource({"219.999,215", "220,220", "224.999,220", "225,225"})
  void plateau_onABandsLowerEdge_belongsToThatBand(double celsius, int band) {
    Course course = Course.began().celsius(0, celsius).celsius(10, celsius);

    assertThat(course.in(band)).isEqualTo(10);
    assertThat(course.total().exposure().bands()).hasSize(1);
  }

  @Test
  void plateau_atTheThreshold_isNotHot() {
    assertThat(Course.began().celsius(0, 150).celsius(10, 150).total()).isEqualTo(Tally.NONE);
  }

  @Test
  void fall_fromABandsEdge_isInTheBandBelow() {
    Course course = Course.began().celsius(0, 220).celsius(5, 215).celsius(10, 215);

    assertThat(course.in(215)).isEqualTo(10);
    assertThat(course.total().exposure().bands()).hasSize(1);
  }

  @ParameterizedTest
  @ValueSource(doubles = {0.1, 0.25, 1, 2, 7, 29})
  void trapezoid_sampledAtAnyPeriodAndItsCorners_agreesWithTheClosedForm(double period) {
    // Closed form: 25 to 225 at 2 K/s, an hour at 225, down at 1 K/s to 25.
    // Hot above 150: 37.5 s + 3600 s + 75 s; each 5 K band gets 2.5 s up and 5 s down.
    TreeSet<Double> times = new TreeSet<>(List.of(100.0, 3700.0, 3900.0));
    for (double at = 0; at < 3900; at += period) {
      times.add(at);
    }
    Course course = Course.began();
    times.forEach(at -> course.celsius(at, trapezoid(at)));

    assertThat(course.hotSeconds()).isCloseTo(3712.5, withinPercentage(100 * TOLERANCE));
    assertThat(course.in(150)).isCloseTo(7.5, withinPercentage(100 * TOLERANCE));
    assertThat(course.in(180)).isCloseTo(7.5, withinPercentage(100 * TOLERANCE));
    assertThat(course.in(220)).isCloseTo(7.5, withinPercentage(100 * TOLERANCE));
    assertThat(course.in(225)).isCloseTo(3600, withinPercentage(100 * TOLERANCE));
  }

  private static double trapezoid(double at) {
    return at < 100 ? 25 + 2 * at : at < 3700 ? 225 : Math.max(25, 225 - (at - 3700));
  }

  @Test
  void plateau_of60DaysAt10HoursADay_credits600Hours() {
    // Trade check: 60 days at 10 printing hours a day make 600 h (common practice, no source).
    Course course = Course.began();
    for (int day = 0; day < 60; day++) {
      double morning = day * 86400.0;
      course.celsius(morning - 20, 25).target(morning - 20, 0);
      course.plateau(morning, morning + 36000, 10, 225);
      course.celsius(morning + 36020, 25);
    }

    double ramps = 60 * 2 * 20 * (225 - 150) / 200.0;
    assertThat(course.hotSeconds() / 3600).isCloseTo(600 + ramps / 3600, within(600 * 1e-9));
    assertThat(course.in(225) / 3600).isCloseTo(600, within(600 * TOLERANCE));
  }

  @Test
  void heat_ofABand_remembersItsMeanTemperature() {
    // Closed form: the mean of a straight line over a band is the band's middle.
    Course ramp = Course.began().celsius(0, 200).celsius(30, 230);
    assertThat(ramp.total().exposure().in(215).meanCelsius()).isCloseTo(217.5, within(1e-6));

    Course plateau = Course.began().celsius(0, 216.25).celsius(30, 216.25);
    assertThat(plateau.total().exposure().in(215).meanCelsius()).isCloseTo(216.25, within(1e-6));
  }

  @ParameterizedTest(name = "seed {0}")
  @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16, 17, 18, 19, 20})
  void bands_ofAnyCourse_sumToItsHotTimeToTheNanosecond(long seed) {
    Random random = new Random(seed);
    Course course = Course.began();
    long hot = 0;
    double at = 0;
    double celsius = 20 + random.nextInt(300);
    course.celsius(0, celsius);
    for (int i = 0; i < 2000; i++) {
      double later = at + (1 + random.nextInt(25_000)) / 1000.0;
      double next =
          random.nextInt(4) == 0
              ? celsius
              : Math.max(-50, Math.min(600, celsius + random.nextInt(81) - 40));
      hot += hotNanos(at, celsius, later, next);
      course.celsius(later, next);
      at = later;
      celsius = next;
    }

    assertThat(course.total().exposure().hotNanos()).isEqualTo(hot);
    assertThat(course.total().unobservedNanos()).isZero();
    Tally sum = course.buckets().stream().map(Bucket::tally).reduce(Tally.NONE, Tally::plus);
    assertThat(sum).isEqualTo(course.total());
    course
        .buckets()
        .forEach(
            b ->
                assertThat(b.tally().exposure().hotNanos())
                    .isBetween(0L, b.untilNanos() - b.fromNanos()));
  }

  /** Time of one straight line above 150, from the rule of three and nothing else. */
  private static long hotNanos(double from, double first, double until, double last) {
    long length = Course.nanos(until) - Course.nanos(from);
    if (first > 150 && last > 150) {
      return length;
    }
    if (first <= 150 && last <= 150) {
      return 0;
    }
    long crossing = Math.round((150 - first) / (last - first) * length);
    return first > 150 ? crossing : length - crossing;
  }

  @Test
  void exposure_ofACourseInReferenceHours_followsTheHalvingRule() {
    // Closed form: an hour at Tref + H counts two, at Tref - H half an hour.
    Exposure exposure = Exposure.of(230, 1).plus(Exposure.of(210, 1)).plus(Exposure.of(220, 1));

    assertThat(exposure.referenceHours(220, 10)).isCloseTo(3.5, within(1e-9));
  }
}
