package meltkeeper.config;

import meltkeeper.ledger.Limits;

/**
 * One hot end.
 *
 * @param limits what its account goes by; the gap is that of the printer's source
 * @param heaterWatts power of its heater at full duty, watts
 * @param encoder how its filament encoder counts
 */
public record HotEndSettings(Limits limits, double heaterWatts, Encoder encoder) {

  /** How a filament encoder counts. */
  public enum Encoder {
    /** Up when filament is fed, down when it is drawn back. */
    DIRECTIONAL,
    /** Up both ways. */
    BLIND
  }
}
