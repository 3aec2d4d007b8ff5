package meltkeeper.ledger;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import meltkeeper.protocol.Reading;
import meltkeeper.protocol.Sample;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Late, doubled and retained readings, and a printer's clock that is set back. */
class OrderTest {

  private static Reading celsius(Sample sample, double celsius) {
    return new Reading.HotEndTemperature(sample, celsius);
  }

  @Test
  void duplicate_creditsNothingAndIsCounted() {
    Course course =
        Course.began()
            .tell(celsius(Course.timed(0, 100), 220))
            .tell(celsius(Course.timed(10, 110), 220))
            .tell(celsius(Course.timed(10, 111), 220));

    assertThat(course.hotSeconds()).isEqualTo(10);
    assertThat(course.count(Verdict.DUPLICATE)).isEqualTo(1);
  }

  @Test
  void late_creditsNothingAndIsCounted() {
    Course course =
        Course.began()
            .tell(celsius(Course.timed(0, 100), 220))
            .tell(celsius(Course.timed(10, 110), 220))
            .tell(celsius(Course.timed(5, 111), 180));

    assertThat(course.hotSeconds()).isEqualTo(10);
    assertThat(course.in(220)).isEqualTo(10);
    assertThat(course.count(Verdict.LATE)).isEqualTo(1);
  }

  @Test
  void arrivalsAtOneInstant_withDifferentValues_bothCount() {
    Course course = Course.began().commanded(1, 10).commanded(1, 12).commanded(2, 13);

    assertThat(course.total().commandedMicrometres()).isEqualTo(3000);
    assertThat(course.count(Verdict.TAKEN)).isEqualTo(3);
  }

  @ParameterizedTest(name = "seed {0}")
  @ValueSource(longs = {11, 12, 13, 14, 15, 16, 17, 18})
  void shuffledAndDoubledDeliveries_neverCreditMoreThanTheTruth(long seed) {
    Random random = new Random(seed);
    List<double[]> truth = new ArrayList<>();
    for (int i = 0; i <= 1000; i++) {
      truth.add(new double[] {i * 2.0, 180 + 40 * Math.sin(i / 50.0)});
    }
    Course whole = Course.began();
    truth.forEach(p -> whole.tell(celsius(Course.timed(p[0], p[0]), p[1])));

    List<double[]> delivered = new ArrayList<>();
    for (double[] point : truth) {
      delivered.add(point);
      if (random.nextInt(3) == 0) {
        delivered.add(point);
      }
    }
    for (int i = 0; i + 1 < delivered.size(); i++) {
      if (random.nextInt(3) == 0) {
        delivered.set(i, delivered.set(i + 1, delivered.get(i)));
      }
    }
    Course course = Course.began();
    double arrival = 5000;
    for (double[] point : delivered) {
      arrival += random.nextDouble();
      course.tell(celsius(Course.timed(point[0], arrival), point[1]));
    }

    long first = Course.nanos(delivered.get(0)[0]);
    assertThat(course.total().exposure().hotNanos())
        .isLessThanOrEqualTo(Course.nanos(2000) - first);
    // Thinning by the late ones moves a chord by less than a ten-thousandth here.
    assertThat((double) course.total().exposure().hotNanos())
        .isCloseTo(
            whole.total().exposure().hotNanos() - hotUntil(truth, first),
            org.assertj.core.data.Percentage.withPercentage(0.01));
    assertThat(
            course.count(Verdict.TAKEN)
                + course.count(Verdict.LATE)
                + course.count(Verdict.DUPLICATE))
        .isEqualTo(delivered.size());
  }

  private static double hotUntil(List<double[]> truth, long nanos) {
    Course head = Course.began();
    truth.stream()
        .filter(p -> Course.nanos(p[0]) <= nanos)
        .forEach(p -> head.tell(celsius(Course.timed(p[0], p[0]), p[1])));
    return head.total().exposure().hotNanos();
  }

  @Test
  void clockSetBackByAnHour_isTakenAsTheNewClock() {
    Course course = Course.began();
    for (int i = 0; i <= 600; i++) {
      course.tell(celsius(Course.timed(10_000 + i, i), 220));
    }
    for (int i = 601; i <= 1200; i++) {
      course.tell(celsius(Course.timed(10_000 + i - 3600, i), 220));
    }

    assertThat(course.hotSeconds()).isEqualTo(1200);
    assertThat(course.count(Verdict.LATE)).isEqualTo(5);
  }

  @Test
  void burstOfOldReadings_isNoClockSetBack() {
    Course course = Course.began();
    for (int i = 0; i <= 600; i++) {
      course.tell(celsius(Course.timed(10_000 + i, i), 220));
    }
    for (int i = 0; i <= 300; i++) {
      course.tell(celsius(Course.timed(10_000 + i, 600 + i * 0.002), 220));
    }

    assertThat(course.hotSeconds()).isEqualTo(600);
    assertThat(course.count(Verdict.LATE) + course.count(Verdict.DUPLICATE)).isEqualTo(301);
  }

  @Test
  void sameRecordingTwice_creditsOnce() {
    Course course = Course.began();
    for (int pass = 0; pass < 2; pass++) {
      for (int i = 0; i <= 600; i++) {
        course.tell(celsius(Course.timed(10_000 + i, i), 220));
      }
    }

    assertThat(course.hotSeconds()).isEqualTo(600);
  }

  @Test
  void retained_setsNoTimeAtAll() {
    Course course =
        Course.began()
            .tell(celsius(Course.arriving(0).asRetained(), 220))
            .celsius(100, 220)
            .celsius(101, 220);

    assertThat(course.hotSeconds()).isEqualTo(1);
    assertThat(course.count(Verdict.RETAINED)).isEqualTo(1);
  }
}
