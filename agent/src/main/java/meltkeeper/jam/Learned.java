package meltkeeper.jam;

import java.util.EnumMap;
import java.util.Map;

/** The detectors with what they have learned of one material on one hot end. Mutable. */
record Learned(Feed feed, Heater heater, Load load) {

  /**
   * Evidence that the heater may bring up beside an encoder, which sees more directly, and where it
   * sees too little.
   */
  private static final double DENIED = 0.49;

  Learned(WatchSettings settings) {
    this(new Feed(settings.encoderIsBlind()), new Heater(settings.heaterWatts()), new Load());
  }

  /** What is known of another material beforehand: what the encoder shows, and no more. */
  Learned forAnotherMaterial(WatchSettings settings) {
    return new Learned(feed.forAnotherMaterial(), new Heater(settings.heaterWatts()), new Load());
  }

  /** True while nothing speaks of a jam, so that what is seen is healthy. */
  boolean mayLearn() {
    return feed.isCalm() && heater.isCalm() && load.isCalm();
  }

  void rearm() {
    feed.rearm();
    heater.rearm();
    load.rearm();
  }

  /** The evidence of each detector that has a say. */
  Map<Detector, Double> evidence(Sight sight, boolean troubleTold) {
    Map<Detector, Double> evidence = new EnumMap<>(Detector.class);
    if (sight.seesMeasured()) {
      evidence.put(Detector.FEED_RATIO, feed.evidence());
      evidence.put(Detector.FAST_FEED_RATIO, feed.fastEvidence());
      evidence.put(Detector.DEAD_STOP, feed.stopEvidence());
    }
    if (sight.seesDuty()) {
      boolean denied = isDenied(sight);
      evidence.put(
          Detector.HEATER_BALANCE,
          denied ? Math.min(DENIED, heater.evidence()) : heater.evidence());
    }
    if (sight.seesLoad()) {
      evidence.put(Detector.FEED_LOAD, load.evidence());
    }
    if (troubleTold) {
      evidence.put(Detector.NOTICE, 1.0);
    }
    return evidence;
  }

  private boolean isDenied(Sight sight) {
    return sight.isBlind() || (sight.seesMeasured() && feed.isSure());
  }

  /** Evidence of the heater alone that the feed stopped; 1 and more is decisive. */
  double heaterStopEvidence(Sight sight) {
    return sight.seesDuty() && !isDenied(sight) ? heater.stopEvidence() : 0;
  }

  void keep(Memory memory) {
    feed.keep(memory.within("feed"));
    heater.keep(memory.within("heater"));
    load.keep(memory.within("load"));
  }
}
