package meltkeeper.jam;

import java.util.HashMap;
import java.util.Map;
import meltkeeper.jam.runlength.FalseAlarms;

/**
 * Filament seen to move against filament asked for.
 *
 * <p>What each stretch should show is learned as a line in its speed, for healthy slip grows with
 * speed. Windows are cut by the length asked for and do not overlap, so that errors of counting in
 * adjoining ones cancel. Fast stretches have windows of their own beside the common ones: there a
 * partial clog slips first. Beside both, {@link DeadStop} watches each stretch. Mutable.
 */
final class Feed {

  /** Shortest window, mm asked for: a grinding gear leaves a minute or two. */
  static final double LEAST_WINDOW = 20;

  private static final double WINDOW_PULSES = 12;
  private static final double SKIPPED_AFTER_REARMING = 20;
  private static final double FAST_SHARE = 0.3;

  /** No encoder is coarser, mm; 1 to 3 is common practice, no source. */
  private static final double MOST_PULSE = 4;

  /** What an encoder of unknown scale shows of a millimetre at least. */
  private static final double LEAST_USUAL = 0.4;

  /** Dead zones and retractions that a printer does not tell of mislead a blind encoder. */
  private static final double BLIND_TRUST = 0.6;

  private final boolean blind;
  private final Windows all = new Windows();
  private final Windows fast = new Windows();
  private final DeadStop stop = new DeadStop();
  private final Trend trend = new Trend();

  private double speedEdge = Double.NaN;
  private double skipLeft;
  private double typicalStep = 5;
  private double lastShare = 1;
  private double lastMillimetres;
  private double fastShare = 1;

  Feed(boolean encoderIsBlind) {
    this.blind = encoderIsBlind;
  }

  /**
   * Takes a stretch between two moments.
   *
   * @param asked net mm; for a blind encoder the sum of all movement told
   * @param seen mm by the encoder
   * @param pulse mm that a pulse is worth at most
   */
  void take(
      double asked,
      double seen,
      double seconds,
      double pulse,
      long atNanos,
      FalseAlarms wanted,
      boolean learns) {
    typicalStep += 0.02 * (Math.max(0, asked) - typicalStep);
    if (skipLeft > 0) {
      skipLeft -= asked;
      return;
    }
    double speed = Math.max(0, asked / seconds);
    boolean known = all.baseline().isKnown();
    double usual = known ? all.baseline().ratio(speed) : LEAST_USUAL;
    double pulseAsked = Math.min(MOST_PULSE, pulse / (known ? usual : 1));
    stop.take(asked, seen / usual, pulseAsked, typicalStep, all.millimetresSpread());
    moveEdge(speed, asked);
    double least = Math.max(LEAST_WINDOW, WINDOW_PULSES * pulseAsked);
    boolean calm = learns && stop.isCalm();
    if (all.add(asked, seen, seconds, speed) && all.isFull(least)) {
      lastShare = all.shareOfUsual();
      lastMillimetres = all.asked();
      trend.take(atNanos, lastShare, all.spread());
      all.close(pulse, wanted, calm && fast.isCalm(), blind);
    }
    if (!blind
        && speed >= speedEdge
        && fast.add(asked, seen, seconds, speed)
        && fast.isFull(least)) {
      fastShare = fast.shareOfUsual();
      fast.close(pulse, wanted, calm && all.isCalm(), blind);
    }
  }

  /** The speed above which the fastest part of the filament is fed, learned by small steps. */
  private void moveEdge(double speed, double asked) {
    if (!(asked > 0)) {
      return;
    }
    if (Double.isNaN(speedEdge)) {
      speedEdge = speed;
    }
    double step = 0.002 * asked * Math.max(0.2, speedEdge) / 10;
    speedEdge += speed > speedEdge ? step * (1 - FAST_SHARE) : -step * FAST_SHARE;
  }

  void rearm() {
    all.rearm();
    fast.rearm();
    stop.rearm();
    trend.rearm();
    skipLeft = SKIPPED_AFTER_REARMING;
    lastShare = 1;
    fastShare = 1;
  }

  /** The same encoder with another material: a start that is less sure. */
  Feed forAnotherMaterial() {
    Feed feed = new Feed(blind);
    Map<String, String> values = new HashMap<>();
    keep(
        (name, now) -> {
          values.put(name, now);
          return now;
        });
    feed.keep(values::getOrDefault);
    feed.all.unsettle();
    feed.fast.unsettle();
    feed.rearm();
    return feed;
  }

  double evidence() {
    return blind ? BLIND_TRUST * all.evidence() : all.evidence();
  }

  double fastEvidence() {
    return fast.evidence();
  }

  double stopEvidence() {
    return stop.evidence();
  }

  boolean isCalm() {
    return all.isCalm() && fast.isCalm() && stop.isCalm();
  }

  /** True when it knows what is usual, so that its word counts for more than the heater's. */
  boolean isSure() {
    return all.baseline().isKnown();
  }

  /** What the newest window showed, as a share of what is usual here. */
  double share() {
    return lastShare;
  }

  double fastShare() {
    return fastShare;
  }

  /** How much filament the newest window asked for, mm. */
  double windowMillimetres() {
    return lastMillimetres;
  }

  /** Share of what is asked for that is usually seen at usual speed. */
  double usualRatio() {
    return all.baseline().usualRatio();
  }

  /** Spread of that share from window to window. */
  double usualSpread() {
    return all.spread();
  }

  Trend trend() {
    return trend;
  }

  void keep(Memory memory) {
    all.keep(memory.within("all"));
    fast.keep(memory.within("fast"));
    stop.keep(memory.within("stop"));
    trend.keep(memory.within("trend"));
    speedEdge = memory.number("speedEdge", speedEdge);
    skipLeft = memory.number("skipLeft", skipLeft);
    typicalStep = memory.number("typicalStep", typicalStep);
    lastShare = memory.number("lastShare", lastShare);
    lastMillimetres = memory.number("lastMillimetres", lastMillimetres);
    fastShare = memory.number("fastShare", fastShare);
  }
}
