package meltkeeper.demo;

import java.util.List;

/**
 * A filament's heat. Specific heat is piecewise linear in temperature.
 *
 * @param name of the polymer
 * @param gramsPerCubicCm density
 * @param heats at least two, by rising temperature; above the last it stays as it is
 */
public record Plastic(String name, double gramsPerCubicCm, List<SpecificHeat> heats) {

  /** Specific heat at one temperature, J/(g K) at °C. */
  public record SpecificHeat(double celsius, double joulesPerGramKelvin) {}

  /** Polylactide, amorphous as filament is. */
  public static final Plastic PLA =
      new Plastic("PLA", 1.24, List.of(at(20, 1.20), at(55, 1.42), at(65, 2.00), at(210, 2.18)));

  /** Glycol-modified polyethylene terephthalate. */
  public static final Plastic PETG =
      new Plastic(
          "PETG",
          1.27,
          List.of(
              at(20, 1.15),
              at(60, 1.30),
              at(100, 1.76),
              at(150, 1.88),
              at(200, 1.97),
              at(250, 2.05)));

  /** Acrylonitrile butadiene styrene. */
  public static final Plastic ABS =
      new Plastic("ABS", 1.04, List.of(at(20, 1.40), at(95, 1.70), at(115, 2.05), at(240, 2.40)));

  /** Cross-section of filament 1.75 mm across, mm². */
  static final double FILAMENT_MM2 = Math.PI * 1.75 * 1.75 / 4;

  private static final double CUBIC_MM_PER_CUBIC_CM = 1000;

  public Plastic {
    heats = List.copyOf(heats);
  }

  private static SpecificHeat at(double celsius, double joulesPerGramKelvin) {
    return new SpecificHeat(celsius, joulesPerGramKelvin);
  }

  /** Heat that a gram takes from one temperature to the other, J/g; neither below the first. */
  double joulesPerGram(double from, double until) {
    return heatFromFirst(until) - heatFromFirst(from);
  }

  /** Power that melting takes, W, of filament fed at that many mm/s. */
  double meltWatts(double millimetresPerSecond, double from, double until) {
    double gramsPerSecond =
        millimetresPerSecond * FILAMENT_MM2 / CUBIC_MM_PER_CUBIC_CM * gramsPerCubicCm;
    return gramsPerSecond * joulesPerGram(from, until);
  }

  private double heatFromFirst(double until) {
    double heat = 0;
    for (int i = 0; i + 1 < heats.size(); i++) {
      SpecificHeat low = heats.get(i);
      SpecificHeat high = heats.get(i + 1);
      double reach = Math.min(until, high.celsius()) - low.celsius();
      if (!(reach > 0)) {
        return heat;
      }
      double slope =
          (high.joulesPerGramKelvin() - low.joulesPerGramKelvin())
              / (high.celsius() - low.celsius());
      heat += reach * (low.joulesPerGramKelvin() + slope * reach / 2);
    }
    SpecificHeat last = heats.get(heats.size() - 1);
    return heat + Math.max(0, until - last.celsius()) * last.joulesPerGramKelvin();
  }
}
