package meltkeeper.jam;

import java.util.Arrays;
import meltkeeper.jam.heat.Melt;

/**
 * How the heater's duty answers the feed, learned for one hot end and material.
 *
 * <p>A window's mean duty is {@code level + gains . feeds + storage . dT/dt + loss . (T - target) +
 * fan}, the feeds being those of this window and the three before, for the controller's and the
 * sensor's delay. Coefficients are learned by {@link LinearFit}, starting from the polymer's heat;
 * the energy balance holds whatever controller there is. Mutable.
 */
final class FeedAnswer {

  /** Windows over which the duty answers. */
  static final int WINDOWS = 4;

  private static final int STORAGE = 1 + WINDOWS;
  private static final int LOSS = 2 + WINDOWS;
  private static final int FAN = 3 + WINDOWS;
  private static final int SIZE = 4 + WINDOWS;

  /** Where learning starts: the share of the need that shows in each window, and its spread. */
  private static final double[] USUAL_SHARES = {0.6, 0.3, 0.1, 0};

  private static final double[] SHARE_SPREADS = {0.5, 0.5, 0.3, 0.15};
  private static final double LEAST_PROMPT_SHARE = 0.05;
  private static final double FORGETTING = 1.0007;
  private static final double WANDER_SHARE = 0.1;
  private static final double CLIP = 4;
  private static final double SURE_GAIN = 0.2;

  /** A fan may take so much duty more or less than learned; common practice, no source. */
  private static final double FAN_SPREAD = 0.04;

  private final double heaterWatts;
  private LinearFit fit = new LinearFit(new double[SIZE], new double[SIZE]);
  private final double[] inputs = new double[SIZE];
  private final double[] feeds = new double[WINDOWS];
  private boolean started;
  private int learned;
  private int sinceRearmed;
  private double lastFan;
  private double fanVariance;

  FeedAnswer(double heaterWatts) {
    this.heaterWatts = heaterWatts;
  }

  private void start(Heater.Window window) {
    double heat = Melt.joulesPerCubicMm(window.material(), window.targetCelsius());
    double gain = Melt.duty(1, heat, heaterWatts);
    double[] prior = new double[SIZE];
    double[] spread = new double[SIZE];
    prior[0] = 0.3;
    spread[0] = 0.3;
    for (int i = 0; i < WINDOWS; i++) {
      prior[1 + i] = USUAL_SHARES[i] * gain;
      spread[1 + i] = SHARE_SPREADS[i] * gain;
    }
    prior[STORAGE] = 14 / heaterWatts;
    spread[STORAGE] = 0.5 * prior[STORAGE];
    prior[LOSS] = 0.05 / heaterWatts;
    spread[LOSS] = 0.3 * prior[LOSS];
    prior[FAN] = 0.03;
    spread[FAN] = 0.06;
    fit = new LinearFit(prior, spread);
    started = true;
  }

  /** Takes what the window asks of the heater; true once so many windows follow one another. */
  boolean looks(Heater.Window window) {
    if (!started) {
      start(window);
    }
    System.arraycopy(feeds, 0, feeds, 1, WINDOWS - 1);
    feeds[0] = window.feed();
    inputs[0] = 1;
    System.arraycopy(feeds, 0, inputs, 1, WINDOWS);
    inputs[STORAGE] = window.kelvinPerSecond();
    inputs[LOSS] = window.aboveTarget();
    inputs[FAN] = window.fan();
    double step = FAN_SPREAD * (window.fan() - lastFan);
    fanVariance = step * step;
    lastFan = window.fan();
    sinceRearmed++;
    return sinceRearmed > WINDOWS;
  }

  /** Duty that those feeds need, mm/s, newest first. */
  double need(double[] ofFeeds) {
    double sum = 0;
    for (int i = 0; i < WINDOWS; i++) {
      sum += fit.coefficient(1 + i) * ofFeeds[i];
    }
    return Math.max(0, sum);
  }

  double[] feeds() {
    return feeds;
  }

  /** Variance of the need, for what is not known of the gains. */
  double needVariance() {
    double[] ofNeed = new double[SIZE];
    System.arraycopy(feeds, 0, ofNeed, 1, WINDOWS);
    return fit.uncertainty(ofNeed);
  }

  /** What is left of the duty without heat stored and lost, and without the fan. */
  double rest(double duty) {
    double sum = duty;
    for (int i = STORAGE; i < SIZE; i++) {
      sum -= fit.coefficient(i) * inputs[i];
    }
    return sum;
  }

  /** Variance that a step of the fan in this window adds to the level. */
  double fanVariance() {
    return fanVariance;
  }

  /** The shares of an answer that show in this window and the next; their sum is 1. */
  double[] kernel() {
    double[] shares = new double[WINDOWS];
    double sum = 0;
    for (int i = 0; i < WINDOWS; i++) {
      double least = i == 0 ? LEAST_PROMPT_SHARE * dutyPerSpeed() : 0;
      shares[i] = Math.max(least, fit.coefficient(1 + i));
      sum += shares[i];
    }
    if (!(sum > 0)) {
      shares[0] = 1;
      sum = 1;
    }
    for (int i = 0; i < WINDOWS; i++) {
      shares[i] /= sum;
    }
    return shares;
  }

  /**
   * Learns from a healthy window.
   *
   * @param noise variance of a window's duty
   * @param jumped variance that the level's supposed jump in this window had
   */
  void learn(double duty, double noise, double jumped) {
    learned = Math.min(learned + 1, 100_000);
    fit.forget(1, 0, jumped + fanVariance);
    double spread = CLIP * Math.sqrt(noise + fit.uncertainty(inputs));
    double residual = duty - fit.predict(inputs);
    fit.learn(inputs, Math.max(-spread, Math.min(spread, residual)), noise);
    fit.forget(FORGETTING, 0, WANDER_SHARE * noise);
  }

  /** How many windows it has learned from. */
  int learned() {
    return learned;
  }

  /** True when what the feed needs is known well enough to miss it. */
  boolean isSure() {
    double[] each = new double[SIZE];
    Arrays.fill(each, 1, 1 + WINDOWS, 1);
    return Math.sqrt(fit.uncertainty(each)) < SURE_GAIN * dutyPerSpeed();
  }

  /** Duty that a millimetre a second of feed is known to need. */
  double dutyPerSpeed() {
    double sum = 0;
    for (int i = 0; i < WINDOWS; i++) {
      sum += fit.coefficient(1 + i);
    }
    return sum;
  }

  void rearm() {
    sinceRearmed = 0;
    if (started) {
      fit.forget(1, 0, 0.01);
    }
  }

  void keep(Memory memory) {
    fit.keep(memory.within("fit"));
    memory.numbers("feed", feeds);
    started = memory.flag("started", started);
    learned = (int) memory.count("learned", learned);
    sinceRearmed = (int) memory.count("sinceRearmed", sinceRearmed);
    lastFan = memory.number("lastFan", lastFan);
  }
}
