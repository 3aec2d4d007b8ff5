package meltkeeper.jam;

import java.util.Comparator;
import java.util.Map;
import java.util.Optional;
import meltkeeper.protocol.HotEnd;

/** Makes one level of what the detectors say, and keeps it until they are calm again. Mutable. */
final class Judgement {

  private static final double CALM = 0.5;
  private static final String AS_USUAL = "feeds as usual";
  private static final String AT_REST = "does not feed at temperature now";

  private Level level = Level.CLEAR;
  private Detector loudest = Detector.FEED_RATIO;
  private Outlook outlook = Outlook.NOTHING_HEARD;

  Optional<Finding> judge(
      HotEnd hotEnd, Learned learned, Sight sight, Signals signals, HotIdle idle, boolean looks) {
    Map<Detector, Double> evidence = learned.evidence(sight, signals.trouble.isPresent());
    double stop =
        Math.max(
            learned.heaterStopEvidence(sight),
            Math.max(
                evidence.getOrDefault(Detector.DEAD_STOP, 0.0),
                evidence.getOrDefault(Detector.NOTICE, 0.0)));
    Level next = next(evidence, stop, sight, looks);
    boolean changes = next != level;
    if (next == Level.CLEAR && !changes) {
      outlook =
          new Outlook(
              level, evidence, looks ? AS_USUAL : AT_REST, Optional.empty(), Optional.empty());
      return Optional.empty();
    }
    Optional<Map.Entry<Detector, Double>> most =
        evidence.entrySet().stream().max(Comparator.comparingDouble(Map.Entry::getValue));
    if (next != Level.CLEAR) {
      loudest = most.map(Map.Entry::getKey).orElse(loudest);
    }
    level = next;
    outlook =
        new Outlook(
            level,
            evidence,
            Words.because(level, loudest, learned, sight, signals, looks),
            level == Level.NARROWING && sight.seesMeasured()
                ? learned.feed().trend().minutesToStall()
                : Optional.empty(),
            level.isJam() ? Words.cause(loudest, learned, sight, signals, idle) : Optional.empty());
    return changes
        ? Optional.of(
            new Finding(
                hotEnd,
                signals.atNanos,
                level,
                loudest,
                evidence.getOrDefault(loudest, 0.0),
                outlook.because(),
                outlook.minutesToStall(),
                outlook.cause()))
        : Optional.empty();
  }

  private Level next(Map<Detector, Double> evidence, double stop, Sight sight, boolean looks) {
    double most = evidence.values().stream().mapToDouble(e -> e).max().orElse(0);
    if (stop >= 1 || (level == Level.STALLED && stop >= CALM)) {
      return Level.STALLED;
    }
    if (most >= 1 || (level.isJam() && most >= CALM)) {
      return Level.NARROWING;
    }
    return looks && sight.isBlind() ? Level.BLIND : Level.CLEAR;
  }

  Outlook outlook() {
    return outlook;
  }

  void keep(Memory memory) {
    level = Level.valueOf(memory.word("level", level.name()));
    loudest = Detector.valueOf(memory.word("loudest", loudest.name()));
  }
}
