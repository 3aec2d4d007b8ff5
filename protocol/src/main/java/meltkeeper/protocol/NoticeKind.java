package meltkeeper.protocol;

/** What a printer's words are about. */
public enum NoticeKind {
  /** The printer's controller started anew: it was without power, or reset. */
  RESTARTED,
  /** The filament ran out, or its sensor saw no motion. */
  RUNOUT,
  /** The printer stopped heating because something is wrong. */
  HEATER_FAULT,
  /** The printer paused, by itself or by hand. */
  PAUSED,
  /** A paused job went on. */
  RESUMED,
  /** A change of filament is asked for or under way. */
  FILAMENT_CHANGE,
  /** Any other words. */
  OTHER
}
