package meltkeeper.jam;

import meltkeeper.jam.heat.Melt;
import meltkeeper.jam.runlength.FalseAlarms;

/**
 * Heater duty against the duty that the feed should need, from temperature, duty and filament asked
 * for alone.
 *
 * <p>Model of a window's mean duty: {@code level + gains . feeds + storage . dT/dt + loss . (T -
 * target) + fan}, the feeds being those of this window and the two before, for the controller's and
 * the sensor's delay. Coefficients are learned by {@link LinearFit}, starting from the polymer's
 * heat; the energy balance holds whatever controller there is.
 *
 * <p>A fan, a draught or the mains move the level as much as a jam would, so a level alone tells
 * nothing. What they cannot do is stop the duty from answering the feed. Two suppositions of a jam
 * are weighed against health by the sum of their log-likelihood ratios (Page 1954): that the feed's
 * share of the duty faded at some time, the level being whatever it is; and that it dropped at one
 * moment from where the level stood. Each sum alarms in health at most once in exp(limit) windows
 * (Lorden 1971, from memory). What is left of correlation between windows is learned and taken out
 * beforehand. Mutable.
 */
final class Heater {

  /** The share of the feed's need that is left when it faded; none is when it dropped. */
  private static final double LEFT = 0.4;

  private static final double CALM = 0.3;
  private static final double PRIOR_NOISE = 0.012;
  private static final double LEAST_NOISE = 0.003;
  private static final double FORGETTING = 1.0007;
  private static final double MOST_CORRELATION = 0.8;
  private static final int ENOUGH = 40;

  /** For what learned trust does not show: the rarest trouble is not among what was seen. */
  private static final double MARGIN = 1.35;

  private static final double SURE_GAIN = 0.2;

  /** How far the duty's answer to a change of feed is off what a line makes of it. */
  private static final double GAIN_ERROR = 0.15;

  private static final int GAINS = 3;

  private final double heaterWatts;
  private LinearFit fit = new LinearFit(new double[7], new double[7]);
  private final double[] inputs = new double[7];
  private final double[] feeds = new double[GAINS];
  private final DutyLevel healthy = new DutyLevel();
  private final DutyLevel faded = new DutyLevel();
  private final DutyLevel dropped = new DutyLevel();

  private boolean started;
  private double noise = PRIOR_NOISE * PRIOR_NOISE;
  private double correlation;
  private double lastError = Double.NaN;
  private double lastRest = Double.NaN;
  private double lastNeed = Double.NaN;
  private final LikelihoodSum fadedSum = new LikelihoodSum();
  private final LikelihoodSum droppedSum = new LikelihoodSum();
  private double limit = 12;
  private int windows;
  private int sinceRearmed;
  private double lastFeed;
  private double usualNeed;

  Heater(double heaterWatts) {
    this.heaterWatts = heaterWatts;
  }

  /** A window of at least some seconds; all values are means over it. */
  record Window(
      double seconds,
      double duty,
      double feed,
      double kelvinPerSecond,
      double aboveTarget,
      double fan,
      double targetCelsius,
      String material) {}

  private void start(Window window) {
    double heat = Melt.joulesPerCubicMm(window.material(), window.targetCelsius());
    double gain = Melt.duty(1, heat, heaterWatts);
    double storage = 14 / heaterWatts;
    double loss = 0.05 / heaterWatts;
    fit =
        new LinearFit(
            new double[] {0.3, 0.6 * gain, 0.3 * gain, 0.1 * gain, storage, loss, 0.03},
            new double[] {
              0.3, 0.5 * gain, 0.5 * gain, 0.3 * gain, 0.5 * storage, 0.3 * loss, 0.06
            });
    started = true;
  }

  /**
   * Takes a window in which the hot end was at its target.
   *
   * @param learns false while something else speaks of a jam
   */
  void take(Window window, FalseAlarms wanted, boolean learns) {
    if (!started) {
      start(window);
    }
    System.arraycopy(feeds, 0, feeds, 1, GAINS - 1);
    feeds[0] = window.feed();
    lastFeed = window.feed();
    inputs[0] = 1;
    System.arraycopy(feeds, 0, inputs, 1, GAINS);
    inputs[4] = window.kelvinPerSecond();
    inputs[5] = window.aboveTarget();
    inputs[6] = window.fan();
    sinceRearmed++;
    if (sinceRearmed <= GAINS) {
      return;
    }
    weigh(window, wanted);
    if (learns && isCalm()) {
      learn(window.duty());
    }
  }

  private void weigh(Window window, FalseAlarms wanted) {
    double need = 0;
    double[] ofNeed = new double[inputs.length];
    for (int i = 0; i < GAINS; i++) {
      need += fit.coefficient(1 + i) * feeds[i];
      ofNeed[1 + i] = feeds[i];
    }
    need = Math.max(0, need);
    double other = 0;
    for (int i = 1 + GAINS; i < inputs.length; i++) {
      other += fit.coefficient(i) * inputs[i];
    }
    double rest = window.duty() - other;
    usualNeed += 0.1 * (need - usualNeed);
    double swing = GAIN_ERROR * (need - usualNeed);
    double unsure = fit.uncertainty(ofNeed) + otherUncertainty() + swing * swing;
    limit = MARGIN * Math.log(Math.max(10, wanted.samples(window.seconds())));
    double r = correlation;
    double fresh = noise * (1 - r * r);
    double white = rest - r * lastRest;
    double whiteNeed = need - r * lastNeed;
    boolean first = Double.isNaN(lastRest);
    lastRest = rest;
    lastNeed = need;
    if (first) {
      return;
    }
    double error = healthy.standardised(white - whiteNeed, fresh, unsure);
    double jumps = healthy.jumpChance();
    double well = healthy.take(white - whiteNeed, fresh, unsure, jumps);
    double fade = faded.take(white - LEFT * whiteNeed, fresh, unsure * LEFT * LEFT, jumps);
    double drop = dropped.take(white, fresh, 0, jumps);
    if (isCalm()) {
      healthy.learnJumps();
    }
    learnNoise(error);
    if (windows < ENOUGH || !knowsGain()) {
      return;
    }
    fadedSum.take(fade - well, limit);
    droppedSum.take(drop - well, limit);
    if (droppedSum.isZero()) {
      dropped.follow(healthy);
    }
  }

  /** True when what the feed needs is known well enough to miss it. */
  private boolean knowsGain() {
    double[] each = {0, 1, 1, 1, 0, 0, 0};
    return Math.sqrt(fit.uncertainty(each)) < SURE_GAIN * dutyPerSpeed();
  }

  private double otherUncertainty() {
    double sum = 0;
    for (int i = 1 + GAINS; i < inputs.length; i++) {
      sum += inputs[i] * inputs[i] * fit.variance(i);
    }
    return sum * 0.1;
  }

  private void learnNoise(double error) {
    if (!isCalm()) {
      return;
    }
    double share = 1.0 / Math.min(300, 10 + windows);
    double held = Math.max(-2.5, Math.min(2.5, error));
    noise *= 1 + share * (held * held - 1);
    noise = Math.max(LEAST_NOISE * LEAST_NOISE, noise);
    if (!Double.isNaN(lastError)) {
      correlation = Math.max(0, Math.min(MOST_CORRELATION, correlation + share * held * lastError));
    }
    lastError = held;
  }

  private void learn(double duty) {
    windows = Math.min(windows + 1, 100_000);
    double spread = 4 * Math.sqrt(noise + fit.uncertainty(inputs));
    double residual = duty - fit.predict(inputs);
    fit.learn(inputs, Math.max(-spread, Math.min(spread, residual)), noise);
    fit.forget(FORGETTING, 0, 0.1 * noise);
  }

  void rearm() {
    healthy.rearm();
    faded.rearm();
    dropped.rearm();
    fadedSum.rearm();
    droppedSum.rearm();
    lastError = Double.NaN;
    lastRest = Double.NaN;
    lastNeed = Double.NaN;
    sinceRearmed = 0;
    if (started) {
      fit.forget(1, 0, 0.01);
    }
  }

  double evidence() {
    return Math.max(fadedSum.evidence(limit), droppedSum.evidence(limit));
  }

  boolean isCalm() {
    return evidence() < CALM;
  }

  /** Duty that a millimetre a second of feed is known to need. */
  double dutyPerSpeed() {
    double sum = 0;
    for (int i = 0; i < GAINS; i++) {
      sum += fit.coefficient(1 + i);
    }
    return sum;
  }

  double feed() {
    return lastFeed;
  }

  void keep(Memory memory) {
    fit.keep(memory.within("fit"));
    memory.numbers("feed", feeds);
    healthy.keep(memory.within("healthy"));
    faded.keep(memory.within("faded"));
    dropped.keep(memory.within("dropped"));
    started = memory.flag("started", started);
    noise = memory.number("noise", noise);
    correlation = memory.number("correlation", correlation);
    lastError = memory.number("lastError", lastError);
    lastRest = memory.number("lastRest", lastRest);
    lastNeed = memory.number("lastNeed", lastNeed);
    fadedSum.keep(memory.within("fadedSum"));
    droppedSum.keep(memory.within("droppedSum"));
    limit = memory.number("limit", limit);
    windows = (int) memory.count("windows", windows);
    sinceRearmed = (int) memory.count("sinceRearmed", sinceRearmed);
    lastFeed = memory.number("lastFeed", lastFeed);
    usualNeed = memory.number("usualNeed", usualNeed);
  }
}
