package meltkeeper.jam;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Random;
import java.util.SortedMap;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A duty of a level, of what the feed needs and of noise, made by the test, window by window. */
class StopsTest {

  private static final double LIMIT = 15;
  private static final double GAIN = 0.03;
  private static final double NOISE = 0.004;
  private static final double WANDER = 0.001;
  private static final double JUMPS = 0.01;
  private static final double[] KERNEL = {0.7, 0.2, 0.1, 0};
  private static final long SEED = 5;

  private final Random random = new Random(SEED);
  private final double[] asked = new double[FeedAnswer.WINDOWS];
  private final double[] fed = new double[FeedAnswer.WINDOWS];
  private final DutyLevel healthy = new DutyLevel();
  private final Stops stops = new Stops();
  private double level = 0.3;

  @Test
  void health_isNotTakenForAStop() {
    assertThat(mostEvidenceOf(3000)).as("seed %d", SEED).isLessThan(0.8);
  }

  /** A draught that ends makes the duty fall as a stop would, but it goes on answering the feed. */
  @Test
  void levelThatFallsByTheNeed_isNotTakenForAStop() {
    mostEvidenceOf(600);
    level -= GAIN * 2;
    assertThat(mostEvidenceOf(60)).as("seed %d", SEED).isLessThan(1);
  }

  @ParameterizedTest
  @ValueSource(doubles = {0, 0.2, 0.5, 0.8})
  void stop_inTheMiddleOfAWindow_isSeenWithinTwentyWindows(double through) {
    mostEvidenceOf(600);
    step(through);
    int windows = 1;
    while (stops.evidence(LIMIT) < 1 && windows < 100) {
      step(0);
      windows++;
    }
    assertThat(windows).as("seed %d", SEED).isLessThanOrEqualTo(20);
  }

  @Test
  void sumThatGrowsTooSlowly_isGivenUp() {
    for (int window = 0; window < 600; window++) {
      weigh(-4);
    }
    double most = 0;
    for (int window = 0; window < 1000; window++) {
      weigh(0.1);
      most = Math.max(most, stops.evidence(LIMIT));
    }
    assertThat(most).isBetween(0.5, 0.9);
  }

  @Test
  void keptAndReadBack_goesOnAsItWould() {
    mostEvidenceOf(600);
    step(0.5);
    step(0);
    SortedMap<String, String> kept = new TreeMap<>();
    stops.keep(
        (name, now) -> {
          kept.put(name, now);
          return now;
        });
    Stops other = new Stops();
    other.keep((name, now) -> kept.getOrDefault(name, now));
    assertThat(stops.evidence(LIMIT)).isPositive();
    for (Stops each : List.of(stops, other)) {
      each.suppose(healthy, asked);
      each.weigh(stop -> 4 + likelihood(stop.level(), level + need(stop.feeds())), LIMIT);
    }
    assertThat(other.evidence(LIMIT)).isEqualTo(stops.evidence(LIMIT));
  }

  private void weigh(double ratio) {
    stops.suppose(healthy, asked);
    stops.weigh(stop -> ratio, LIMIT);
  }

  /** The most that speaks for a stop in so many healthy windows. */
  private double mostEvidenceOf(int windows) {
    double most = 0;
    for (int window = 0; window < windows; window++) {
      step(1);
      most = Math.max(most, stops.evidence(LIMIT));
    }
    return most;
  }

  /** A window in which that share of what is asked for is fed. */
  private void step(double share) {
    System.arraycopy(asked, 0, asked, 1, asked.length - 1);
    System.arraycopy(fed, 0, fed, 1, fed.length - 1);
    asked[0] = 1 + 2 * random.nextDouble();
    fed[0] = share * asked[0];
    level += WANDER * random.nextGaussian();
    double rest = level + need(fed) + NOISE * random.nextGaussian();
    boolean known = healthy.isKnown();
    if (known) {
      stops.suppose(healthy, asked);
    }
    double well = likelihood(healthy, rest - need(asked));
    if (known) {
      stops.weigh(stop -> likelihood(stop.level(), rest - need(stop.feeds())) - well, LIMIT);
    }
  }

  private static double need(double[] feeds) {
    double sum = 0;
    for (int i = 0; i < feeds.length; i++) {
      sum += GAIN * KERNEL[i] * feeds[i];
    }
    return sum;
  }

  private static double likelihood(DutyLevel duty, double rest) {
    return duty.take(rest, KERNEL, NOISE * NOISE, WANDER * WANDER, JUMPS);
  }
}
