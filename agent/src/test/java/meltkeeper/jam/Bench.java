package meltkeeper.jam;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Random;
import java.util.Set;
import meltkeeper.protocol.HotEnd;
import meltkeeper.protocol.JobState;
import meltkeeper.protocol.NoticeKind;
import meltkeeper.protocol.Reading;
import meltkeeper.protocol.Sample;

/**
 * A printer on the bench, every two seconds a sample, for tests that want one thing to happen: the
 * simulator is for judging. Speeds vary, slip is 1 %, nothing else is noisy. Mutable.
 */
final class Bench {

  private static final double STEP = 2;
  private static final double FAST = 5;

  private final Watch watch;
  private final HotEnd hotEnd;
  private final Random random = new Random(11);
  private final List<Finding> findings = new ArrayList<>();
  private final Set<String> without = new HashSet<>();
  private long seconds = 1_000;
  private double commanded;
  private double measured;
  private double target = 210;
  private double celsius = Double.NaN;
  private double share = 1;
  private double fastShare = 1;
  private double pace = 1;
  private double scale = 1;
  private double pulse = 0.01;
  private double loadFactor = Double.NaN;
  private boolean feeds = true;
  private JobState state = JobState.PRINTING;
  private String material = "PLA";

  Bench(HotEnd hotEnd, WatchSettings settings) {
    this.hotEnd = hotEnd;
    this.watch = Watch.opened(hotEnd, settings);
  }

  Watch watch() {
    return watch;
  }

  List<Finding> findings() {
    return findings;
  }

  Finding lastFinding() {
    return findings.get(findings.size() - 1);
  }

  double commanded() {
    return commanded;
  }

  Bench passing(double newShare) {
    share = newShare;
    return this;
  }

  Bench passingWhenFast(double newShare) {
    fastShare = newShare;
    return this;
  }

  /** Asks for so many times the usual feed. */
  Bench pace(double factor) {
    pace = factor;
    return this;
  }

  Bench encoderScale(double newScale) {
    scale = newScale;
    return this;
  }

  Bench pulse(double millimetres) {
    pulse = millimetres;
    return this;
  }

  Bench state(JobState newState) {
    state = newState;
    return this;
  }

  Bench feeds(boolean now) {
    feeds = now;
    return this;
  }

  Bench material(String name) {
    material = name;
    return this;
  }

  Bench target(double newTarget) {
    target = newTarget;
    return this;
  }

  Bench celsius(double fixed) {
    celsius = fixed;
    return this;
  }

  Bench load(double factor) {
    loadFactor = factor;
    return this;
  }

  Bench without(String signal) {
    without.add(signal);
    return this;
  }

  Bench say(NoticeKind kind) {
    take(new Reading.Notice(sample(), kind, ""));
    return this;
  }

  /** Goes on until that level is told; fails when it is not within so many seconds. */
  void printUntil(Level level, int mostSeconds) {
    for (int i = 0; i < mostSeconds; i += (int) STEP) {
      print((int) STEP);
      if (watch.outlook().level() == level) {
        return;
      }
    }
    throw new AssertionError(
        "not " + level + " within " + mostSeconds + " s, but " + watch.outlook());
  }

  Bench print(int howLong) {
    for (int i = 0; i < howLong; i += (int) STEP) {
      step();
    }
    return this;
  }

  private void step() {
    seconds += (long) STEP;
    double speed = target > 0 && feeds ? pace * (1 + 5 * random.nextDouble()) : 0;
    double asked = speed * STEP;
    commanded += asked;
    double fed = asked * share * (speed > FAST ? fastShare : 1);
    measured += fed * (0.99 + 0.01 * random.nextGaussian()) * scale;
    double shown = Double.isNaN(celsius) ? target : celsius;
    take(new Reading.HotEndTemperature(sample(), shown + 0.1 * random.nextGaussian()));
    take(new Reading.HotEndTarget(sample(), target));
    take(new Reading.JobStatus(sample(), state));
    take(new Reading.Material(sample(), material));
    if (!without.contains("duty")) {
      double duty = 0.2 + 0.0268 * speed * share + 0.01 * random.nextGaussian();
      take(new Reading.HeaterDuty(sample(), Math.max(0, Math.min(1, duty))));
    }
    if (!without.contains("commanded")) {
      take(new Reading.FilamentCommanded(sample(), commanded));
    }
    if (!without.contains("measured")) {
      take(new Reading.FilamentMeasured(sample(), Math.floor(measured / pulse) * pulse));
    }
    if (!Double.isNaN(loadFactor)) {
      double load = 20 * Math.sqrt(Math.max(0.1, speed)) * loadFactor;
      take(new Reading.FeedLoad(sample(), load * (1 + 0.05 * random.nextGaussian())));
    }
  }

  Reading lateReading() {
    long nanos = (seconds - 100) * 1_000_000_000L;
    return new Reading.HotEndTemperature(Sample.timed(hotEnd, nanos, nanos), 20);
  }

  private Sample sample() {
    long nanos = seconds * 1_000_000_000L;
    return Sample.timed(hotEnd, nanos, nanos);
  }

  private void take(Reading reading) {
    watch.step(reading).ifPresent(findings::add);
  }
}
