package meltkeeper.alert;

import java.time.Duration;
import java.util.random.RandomGenerator;

/**
 * When a failed delivery is tried again: after a pause that doubles from try to try up to a limit,
 * a random part of it, up to a half, left out, so that nobody is hit by all at once.
 *
 * @param attempts after so many the delivery is given up
 */
record Pace(Duration first, Duration longest, int attempts) {

  private static final Duration MOST_REST = Duration.ofSeconds(1);

  static Pace usual(int attempts) {
    return new Pace(Duration.ofSeconds(5), Duration.ofMinutes(15), attempts);
  }

  /** Nanoseconds to wait after that many failures, at least one. */
  long pauseNanos(int failures, RandomGenerator random) {
    double range = (double) first.toNanos() * Math.pow(2, Math.min(failures - 1, 60));
    double capped = Math.min(range, (double) longest.toNanos());
    return (long) (capped - random.nextDouble() * capped / 2);
  }

  /** How long to rest when nothing can be done. */
  Duration rest() {
    return first.compareTo(MOST_REST) < 0 ? first : MOST_REST;
  }

  boolean isSpent(int failures) {
    return failures >= attempts;
  }
}
