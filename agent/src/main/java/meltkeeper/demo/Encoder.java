package meltkeeper.demo;

/**
 * Counts the filament that passes, in whole pulses.
 *
 * @param millimetresPerPulse above 0
 * @param blind true when it counts both directions up
 */
public record Encoder(double millimetresPerPulse, boolean blind) {

  /** What it adds for filament that moved, below 0 for drawn back. */
  double seen(double millimetres) {
    return blind ? Math.abs(millimetres) : millimetres;
  }

  /** The total as told, mm. */
  double told(double millimetres) {
    return Math.floor(millimetres / millimetresPerPulse) * millimetresPerPulse;
  }
}
