package meltkeeper.jam.heat;

/** The heater's share of feeding filament of 1.75 mm. */
public final class Melt {

  /** Cross-section of filament 1.75 mm across, mm². */
  public static final double FILAMENT_SQUARE_MM = Math.PI * 1.75 * 1.75 / 4;

  /**
   * Heat of a common filament where the material is unknown, W per mm³/s (0.44 to 0.48, from the
   * heats of common polymers).
   */
  public static final double USUAL_JOULES_PER_CUBIC_MM = 0.46;

  /** The room, and the filament that comes from it, °C. */
  public static final double ROOM_CELSIUS = 25;

  private Melt() {}

  /** Power that a feed takes, W. */
  public static double watts(double millimetresPerSecond, double joulesPerCubicMm) {
    return millimetresPerSecond * FILAMENT_SQUARE_MM * joulesPerCubicMm;
  }

  /** Heat by volume from the room to the nozzle, of the material labelled so, J/mm³. */
  public static double joulesPerCubicMm(String label, double celsius) {
    return Polymer.ofLabel(label)
        .map(polymer -> polymer.joulesPerCubicMm(ROOM_CELSIUS, celsius))
        .orElse(USUAL_JOULES_PER_CUBIC_MM);
  }

  /** Duty that a feed adds to a heater of that power, as a fraction. */
  public static double duty(
      double millimetresPerSecond, double joulesPerCubicMm, double heaterWatts) {
    return watts(millimetresPerSecond, joulesPerCubicMm) / heaterWatts;
  }
}
