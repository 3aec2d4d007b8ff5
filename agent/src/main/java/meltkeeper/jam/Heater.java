package meltkeeper.jam;

import meltkeeper.jam.runlength.FalseAlarms;

/**
 * Heater duty against the duty that the feed should need, from temperature, duty and filament asked
 * for alone: {@link FeedAnswer} learns the need, {@link DutyNoise} how the rest strays.
 *
 * <p>A fan, a draught or the mains move the level as much as a jam would, so a level alone tells
 * little. What they cannot do is stop the duty from answering the feed. Two suppositions of a jam
 * are weighed against health by the sum of their log-likelihood ratios (Page 1954): that the feed's
 * share of the duty faded at some time, the level being whatever it is; and that the feed stopped
 * at one moment, from where the level stood, so that only what was fed before is still answered:
 * {@link Stops}. Each sum alarms in health at most once in exp(limit) windows (Lorden 1971, from
 * memory). Mutable.
 */
final class Heater {

  /** The share of the feed's need that is left when it faded; none is when it stopped. */
  private static final double LEFT = 0.4;

  /** A feed that fades may stay so for long, and a model that is off adds up all the while. */
  private static final double FADED_MARGIN = 2;

  private static final double CALM = 0.3;
  private static final int ENOUGH = 40;

  /** How far the duty's answer to a change of feed is off what a line makes of it. */
  private static final double GAIN_ERROR = 0.1;

  private static final double USUAL_SHARE = 0.1;

  /** A stop is sure when its evidence passes the limit by so much. */
  private static final double DECISIVE = 1.4;

  /** Windows until it can tell whether it sees enough. */
  private static final int SETTLED = 240;

  /** A stop that would take longer than this to see is not watched for. */
  private static final double TOO_LATE_SECONDS = 1800;

  private final FeedAnswer answer;
  private final DutyNoise noise = new DutyNoise();
  private final DutyLevel healthy = new DutyLevel();
  private final DutyLevel faded = new DutyLevel();
  private final LikelihoodSum fadedSum = new LikelihoodSum();
  private final Stops stops = new Stops();

  private double limit = 12;
  private double usualNeed;
  private double windowSeconds;

  Heater(double heaterWatts) {
    this.answer = new FeedAnswer(heaterWatts);
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

  /**
   * Takes a window in which the hot end was at its target.
   *
   * @param learns false while something else speaks of a jam
   */
  void take(Window window, FalseAlarms wanted, boolean learns) {
    if (!answer.looks(window)) {
      return;
    }
    limit = Math.log(Math.max(10, wanted.samples(window.seconds())));
    windowSeconds = window.seconds();
    weigh(answer.rest(window.duty()));
    if (learns && isCalm()) {
      answer.learn(window.duty(), noise.variance(), healthy.jumpVariance());
    }
  }

  private void weigh(double rest) {
    double need = answer.need(answer.feeds());
    usualNeed += USUAL_SHARE * (need - usualNeed);
    double swing = GAIN_ERROR * (need - usualNeed);
    double fleeting = noise.variance() + answer.needVariance() + swing * swing;
    double wander = noise.wander() + answer.fanVariance();
    double jumps = healthy.jumpChance();
    double[] kernel = answer.kernel();
    boolean first = !healthy.isKnown();
    boolean weighs = !first && answer.learned() >= ENOUGH && answer.isSure();
    if (weighs) {
      stops.suppose(healthy, answer.feeds());
    }
    double well = healthy.take(rest - need, kernel, fleeting, wander, jumps);
    double fade = faded.take(rest - LEFT * need, kernel, fleeting, wander, jumps);
    if (first) {
      return;
    }
    if (isCalm()) {
      healthy.learnJumps();
      noise.learn(healthy.error(), answer.learned());
    }
    if (weighs) {
      fadedSum.take(fade - well, FADED_MARGIN * limit);
      stops.weigh(
          stop ->
              stop.level().take(rest - answer.need(stop.feeds()), kernel, fleeting, wander, jumps)
                  - well,
          limit);
    } else {
      stops.rearm();
    }
  }

  void rearm() {
    answer.rearm();
    noise.rearm();
    healthy.rearm();
    faded.rearm();
    fadedSum.rearm();
    stops.rearm();
  }

  double evidence() {
    return Math.max(fadedSum.evidence(FADED_MARGIN * limit), stops.evidence(limit));
  }

  /** Evidence that the feed does not merely fade but stopped; 1 and more is decisive. */
  double stopEvidence() {
    return stops.evidence(limit) / DECISIVE;
  }

  /**
   * True when these feeds need so little heat that a stop would show too late. Feed that is there
   * speaks for health as loudly as its absence would for a stop, and by the square of its share.
   */
  boolean seesTooLittle() {
    double perWindow = fadedSum.healthPerWindow() / ((1 - LEFT) * (1 - LEFT));
    return answer.learned() >= SETTLED && perWindow * TOO_LATE_SECONDS < limit * windowSeconds;
  }

  boolean isCalm() {
    return evidence() < CALM;
  }

  /** Duty that a millimetre a second of feed is known to need. */
  double dutyPerSpeed() {
    return answer.dutyPerSpeed();
  }

  double feed() {
    return answer.feeds()[0];
  }

  void keep(Memory memory) {
    answer.keep(memory.within("answer"));
    noise.keep(memory.within("strays"));
    healthy.keep(memory.within("well"));
    faded.keep(memory.within("fading"));
    fadedSum.keep(memory.within("fadingSum"));
    stops.keep(memory.within("stoppingSum"));
    limit = memory.number("limit", limit);
    usualNeed = memory.number("usualNeed", usualNeed);
    windowSeconds = memory.number("windowSeconds", windowSeconds);
  }
}
