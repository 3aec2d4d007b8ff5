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
 * at one moment, from where the level stood, so that only what was fed before is still answered.
 * Each sum alarms in health at most once in exp(limit) windows (Lorden 1971, from memory). Mutable.
 */
final class Heater {

  /** The share of the feed's need that is left when it faded; none is when it stopped. */
  private static final double LEFT = 0.4;

  private static final double CALM = 0.3;
  private static final int ENOUGH = 40;

  /** For what learned trust does not show: the rarest trouble is not among what was seen. */
  private static final double MARGIN = 1.5;

  /** A feed that fades may stay so for long, and a wrong model adds up all the while. */
  private static final double FADED_MARGIN = 3;

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
  private final DutyLevel stopped = new DutyLevel();
  private final LikelihoodSum fadedSum = new LikelihoodSum();
  private final LikelihoodSum stoppedSum = new LikelihoodSum();

  /** Feeds of the supposed stop: none since then. */
  private final double[] stoppedFeeds = new double[FeedAnswer.WINDOWS];

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
    double needIfStopped = answer.need(feedsIfStopped());
    usualNeed += USUAL_SHARE * (need - usualNeed);
    double swing = GAIN_ERROR * (need - usualNeed);
    double fleeting = noise.variance() + answer.needVariance() + swing * swing;
    double wander = noise.wander() + answer.fanVariance();
    double jumps = healthy.jumpChance();
    double[] kernel = answer.kernel();
    boolean first = !healthy.isKnown();
    double well = healthy.take(rest - need, kernel, fleeting, wander, jumps);
    double fade = faded.take(rest - LEFT * need, kernel, fleeting, wander, jumps);
    double stop = stopped.take(rest - needIfStopped, kernel, fleeting, wander, jumps);
    if (first) {
      return;
    }
    if (isCalm()) {
      healthy.learnJumps();
      noise.learn(healthy.error(), answer.learned());
    }
    if (answer.learned() >= ENOUGH && answer.isSure()) {
      fadedSum.take(fade - well, FADED_MARGIN * limit);
      stoppedSum.take(stop - well, MARGIN * limit);
    }
  }

  /** As long as nothing speaks of a stop, it is supposed to be in this window. */
  private double[] feedsIfStopped() {
    boolean now = stoppedSum.isZero();
    if (now) {
      stopped.follow(healthy);
    }
    double[] before = now ? answer.feeds() : stoppedFeeds;
    int from = now ? 1 : 0;
    System.arraycopy(before, from, stoppedFeeds, 1, FeedAnswer.WINDOWS - 1);
    stoppedFeeds[0] = 0;
    return stoppedFeeds;
  }

  void rearm() {
    answer.rearm();
    noise.rearm();
    healthy.rearm();
    faded.rearm();
    stopped.rearm();
    fadedSum.rearm();
    stoppedSum.rearm();
  }

  double evidence() {
    return Math.max(fadedSum.evidence(FADED_MARGIN * limit), stoppedSum.evidence(MARGIN * limit));
  }

  /** Evidence that the feed does not merely fade but stopped; 1 and more is decisive. */
  double stopEvidence() {
    return stoppedSum.evidence(MARGIN * limit) / DECISIVE;
  }

  /**
   * True when these feeds need so little heat that a stop would show too late. Feed that is there
   * speaks for health as loudly as its absence would for a stop, and by the square of its share.
   */
  boolean seesTooLittle() {
    double perWindow = fadedSum.healthPerWindow() / ((1 - LEFT) * (1 - LEFT));
    return answer.learned() >= SETTLED
        && perWindow * TOO_LATE_SECONDS < MARGIN * limit * windowSeconds;
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
    stopped.keep(memory.within("stopping"));
    fadedSum.keep(memory.within("fadingSum"));
    stoppedSum.keep(memory.within("stoppingSum"));
    memory.numbers("stoppedFeed", stoppedFeeds);
    limit = memory.number("limit", limit);
    usualNeed = memory.number("usualNeed", usualNeed);
    windowSeconds = memory.number("windowSeconds", windowSeconds);
  }
}
