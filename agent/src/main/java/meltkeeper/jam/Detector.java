package meltkeeper.jam;

import java.util.Locale;

/** What can speak of a jam. */
public enum Detector {
  /** Filament seen to move against filament asked for. */
  FEED_RATIO,
  /** The same on fast moves alone, where a partial clog slips first. */
  FAST_FEED_RATIO,
  /** Filament asked for, and none seen to move. */
  DEAD_STOP,
  /** Heater duty against the duty that the feed should need. */
  HEATER_BALANCE,
  /** The feed motor's load against what is usual at that speed. */
  FEED_LOAD,
  /** The printer's own words. */
  NOTICE;

  /** As users read it, such as {@code feed-ratio}. */
  public String word() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }
}
