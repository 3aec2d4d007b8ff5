package meltkeeper.life;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;

/** What to bear in mind of an answer, in plain words. */
final class Notes {

  /** Beyond this span the halving rule is too crude a stand-in for Arrhenius. */
  private static final double WIDE_KELVIN = 40;

  /** Temperatures closer than this are one temperature. */
  private static final double NARROW_KELVIN = 2;

  /** Bands with a smaller share of all hours are warming up, not work. */
  private static final double WORTH_COUNTING = 0.01;

  private static final double NANOS_PER_HOUR = 3600e9;

  private Notes() {}

  static List<String> on(Posterior posterior, Learned learned) {
    List<String> notes = new ArrayList<>();
    int parts = posterior.parts().size();
    if (parts == 0) {
      notes.add("no part has run yet: this is the belief alone");
    } else if (posterior.failures() == 0) {
      notes.add(
          "no part has failed yet: this is the belief as the survivors have moved it, and it can"
              + " only say that life is not shorter");
    }
    double span = temperatureSpan(posterior.parts());
    if (parts > 0 && span < NARROW_KELVIN) {
      notes.add(
          "all parts ran at one temperature: the halving interval stays as it was believed to be");
    } else if (parts > 0 && learned.halvingIsBelief()) {
      notes.add("the data say next to nothing of the halving interval: it is the belief");
    }
    if (span > WIDE_KELVIN) {
      notes.add(
          String.format(
              Locale.ROOT,
              "temperatures span %.0f K: a halving interval is only a local stand-in for the law"
                  + " of Arrhenius beyond %.0f K",
              span,
              WIDE_KELVIN));
    }
    return notes;
  }

  /** From the coolest to the hottest band that holds a share of the hours worth counting. */
  static double temperatureSpan(List<PartLife> parts) {
    Map<Integer, Double> hours = new TreeMap<>();
    Map<Integer, Double> degreeHours = new TreeMap<>();
    for (PartLife part : parts) {
      for (Spell spell : part.spells()) {
        spell
            .hot()
            .bands()
            .forEach(
                (band, heat) -> {
                  double spent = heat.nanos() / NANOS_PER_HOUR;
                  hours.merge(band, spent, Double::sum);
                  degreeHours.merge(band, spent * heat.meanCelsius(), Double::sum);
                });
      }
    }
    double all = hours.values().stream().mapToDouble(h -> h).sum();
    double[] celsius =
        hours.entrySet().stream()
            .filter(e -> e.getValue() >= WORTH_COUNTING * all)
            .mapToDouble(e -> degreeHours.getOrDefault(e.getKey(), 0.0) / e.getValue())
            .toArray();
    return celsius.length == 0 ? 0 : celsius[celsius.length - 1] - celsius[0];
  }
}
