package meltkeeper.jam.heat;

import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * A polymer's heat. Specific heat is piecewise linear in temperature, and constant beyond its ends.
 *
 * @param name in capitals, as spools are labelled
 * @param gramsPerCubicCm density
 * @param heats at least two, by rising temperature
 */
public record Polymer(String name, double gramsPerCubicCm, List<SpecificHeat> heats) {

  /** Specific heat at one temperature, J/(g K) at °C. */
  public record SpecificHeat(double celsius, double joulesPerGramKelvin) {}

  /** Polylactide: density usual (from memory); heat after Pyda, Bopp, Wunderlich 2004. */
  public static final Polymer PLA =
      of("PLA", 1.24, at(20, 1.20), at(55, 1.42), at(65, 2.00), at(210, 2.18));

  /** Glycol-modified polyester: a copolyester's data sheet (from memory). */
  public static final Polymer PETG =
      of(
          "PETG",
          1.27,
          at(20, 1.15),
          at(60, 1.30),
          at(100, 1.76),
          at(150, 1.88),
          at(200, 1.97),
          at(250, 2.05));

  /** Acrylonitrile butadiene styrene: a supplier's sheet, melt from memory. */
  public static final Polymer ABS =
      of("ABS", 1.04, at(20, 1.40), at(95, 1.70), at(115, 2.05), at(240, 2.40));

  /** Thermoplastic polyurethane: NETZSCH, Thermal Properties of Polymers. */
  public static final Polymer TPU = of("TPU", 1.20, at(20, 1.60), at(80, 1.80), at(230, 2.10));

  /** Polyamide 6: NETZSCH, Thermal Properties of Polymers, melt from memory. */
  public static final Polymer PA6 =
      of("PA6", 1.13, at(20, 1.60), at(60, 1.80), at(215, 2.40), at(225, 2.60), at(260, 2.70));

  private static final List<Polymer> KNOWN = List.of(PETG, PLA, ABS, TPU, PA6);

  public Polymer {
    heats = List.copyOf(heats);
    if (heats.size() < 2 || !(gramsPerCubicCm > 0)) {
      throw new IllegalArgumentException(
          "a polymer needs a density above 0 and two specific heats, not "
              + gramsPerCubicCm
              + " and "
              + heats.size());
    }
  }

  private static Polymer of(String name, double gramsPerCubicCm, SpecificHeat... heats) {
    return new Polymer(name, gramsPerCubicCm, List.of(heats));
  }

  private static SpecificHeat at(double celsius, double joulesPerGramKelvin) {
    return new SpecificHeat(celsius, joulesPerGramKelvin);
  }

  /** The polymer that a spool's label names, such as {@code "Matt PLA black"}. */
  public static Optional<Polymer> ofLabel(String label) {
    String capitals = label.toUpperCase(Locale.ROOT);
    return KNOWN.stream().filter(polymer -> capitals.contains(polymer.name())).findFirst();
  }

  /** Heat that a gram takes from one temperature to the other, without melting of crystals, J/g. */
  public double joulesPerGram(double fromCelsius, double untilCelsius) {
    return heatFromFirst(untilCelsius) - heatFromFirst(fromCelsius);
  }

  /** The same by volume at room temperature, J/mm³, which is W per mm³/s. */
  public double joulesPerCubicMm(double fromCelsius, double untilCelsius) {
    return gramsPerCubicCm / 1000 * joulesPerGram(fromCelsius, untilCelsius);
  }

  private double heatFromFirst(double celsius) {
    SpecificHeat first = heats.get(0);
    double heat = Math.min(0, celsius - first.celsius()) * first.joulesPerGramKelvin();
    for (int i = 0; i + 1 < heats.size(); i++) {
      heat += heatWithin(heats.get(i), heats.get(i + 1), celsius);
    }
    SpecificHeat last = heats.get(heats.size() - 1);
    return heat + Math.max(0, celsius - last.celsius()) * last.joulesPerGramKelvin();
  }

  private static double heatWithin(SpecificHeat low, SpecificHeat high, double celsius) {
    double width = high.celsius() - low.celsius();
    double reach = Math.max(0, Math.min(width, celsius - low.celsius()));
    double rise = high.joulesPerGramKelvin() - low.joulesPerGramKelvin();
    return reach * (low.joulesPerGramKelvin() + rise * reach / width / 2);
  }
}
