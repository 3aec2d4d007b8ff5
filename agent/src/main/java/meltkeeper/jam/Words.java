package meltkeeper.jam;

import java.util.Locale;
import java.util.Optional;
import meltkeeper.protocol.NoticeKind;

/** The watch's reasons in plain words. */
final class Words {

  private Words() {}

  /** Why the level is what it is. */
  static String because(
      Level level,
      Detector detector,
      Learned learned,
      Sight sight,
      Signals signals,
      boolean looks) {
    return switch (level) {
      case CLEAR ->
          looks
              ? "feeds as usual again, or began anew"
              : "stopped feeding, so that the trouble was not seen to end: look before the next"
                  + " batch";
      case BLIND -> sight.cure().orElse("too little is told");
      case NARROWING, STALLED -> speech(detector, learned, signals);
    };
  }

  private static String speech(Detector detector, Learned learned, Signals signals) {
    Feed feed = learned.feed();
    double usual = 100 * feed.usualRatio();
    double spread = 200 * feed.usualSpread() * feed.usualRatio();
    return switch (detector) {
      case FEED_RATIO ->
          String.format(
              Locale.ROOT,
              "fed %.0f %% of what was asked over the last %.0f mm; normal here is %.0f-%.0f %%",
              usual * feed.share(),
              feed.windowMillimetres(),
              usual - spread,
              usual + spread);
      case FAST_FEED_RATIO ->
          String.format(
              Locale.ROOT,
              "on fast moves only %.0f %% of the usual feed comes through; on all moves %.0f %%",
              100 * feed.fastShare(),
              100 * feed.share());
      case DEAD_STOP -> "filament is asked for, and none moves";
      case HEATER_BALANCE ->
          String.format(
              Locale.ROOT,
              "the heater does not answer the feed: %.1f mm/s should need %.1f %% duty more than"
                  + " none",
              learned.heater().feed(),
              100 * learned.heater().dutyPerSpeed() * learned.heater().feed());
      case FEED_LOAD ->
          String.format(
              Locale.ROOT,
              "the feed motor works at %.0f %% of its usual load at this speed",
              100 * learned.load().share());
      case NOTICE ->
          isHeaterFault(signals)
              ? "the printer says that it stopped heating, for something is wrong there"
              : "the printer says that the filament ran out or does not move";
    };
  }

  private static boolean isHeaterFault(Signals signals) {
    return signals.trouble.equals(Optional.of(NoticeKind.HEATER_FAULT));
  }

  /** What may be behind it, by what came first and what else is seen. */
  static Optional<Cause> cause(
      Detector detector, Learned learned, Sight sight, Signals signals, HotIdle idle) {
    Feed feed = learned.feed();
    return switch (detector) {
      case NOTICE ->
          Optional.of(isHeaterFault(signals) ? Cause.HEATER_FAULT : Cause.RUNOUT_OR_TANGLE);
      case FEED_LOAD, FAST_FEED_RATIO ->
          Optional.of(idle.wasLately() ? Cause.HEAT_CREEP : Cause.PARTIAL_CLOG);
      case HEATER_BALANCE -> Optional.empty();
      case DEAD_STOP, FEED_RATIO -> {
        if (sight.seesLoad() && learned.load().share() < 0.6) {
          yield Optional.of(Cause.GRINDING);
        }
        if (idle.wasLately()) {
          yield Optional.of(Cause.HEAT_CREEP);
        }
        if (detector == Detector.DEAD_STOP && feed.trend().fedWell()) {
          yield Optional.of(
              sight.seesDuty() && learned.heater().evidence() < 0.2
                  ? Cause.RUNOUT_OR_TANGLE
                  : Cause.BLOCK);
        }
        yield feed.fastShare() < feed.share() - 0.05
            ? Optional.of(Cause.PARTIAL_CLOG)
            : Optional.empty();
      }
    };
  }
}
