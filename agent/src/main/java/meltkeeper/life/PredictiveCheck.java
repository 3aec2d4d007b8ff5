package meltkeeper.life;

import java.util.ArrayList;
import java.util.List;

/**
 * Are past failures where the model would have put them?
 *
 * @param failures that were seen
 * @param expected failures among all parts, given the hours that each of them ran
 * @param places where each failure fell among the lives that the model expects, in order of ids
 */
public record PredictiveCheck(int failures, double expected, List<Place> places) {

  public PredictiveCheck {
    places = List.copyOf(places);
  }

  /**
   * One failure.
   *
   * @param share of parts that the model expects to have failed by that age, 0 to 1: if the model
   *     is right, these are spread evenly, but for what was censored
   */
  public record Place(String id, double share) {}

  /** Of the parts that the posterior was made of; an uncertain past counts at its stated hours. */
  public static PredictiveCheck of(Posterior posterior) {
    double expected = 0;
    List<Place> places = new ArrayList<>();
    for (PartLife part : posterior.parts()) {
      double hazard = 0;
      double share = 0;
      for (int r = 0; r < posterior.rows().size(); r++) {
        Row row = posterior.rows().get(r);
        double logPowers = logPowers(part, row);
        for (int k = 0; k < row.size(); k++) {
          double ranThrough = Math.exp(logPowers - row.shape() * row.logLife(k));
          double weight = posterior.weight(r) * row.share(k);
          hazard += weight * ranThrough;
          share -= weight * Math.expm1(-ranThrough);
        }
      }
      expected += hazard;
      if (part.hasFailed()) {
        places.add(new Place(part.id(), share));
      }
    }
    return new PredictiveCheck(posterior.failures(), expected, places);
  }

  private static double logPowers(PartLife part, Row row) {
    double past = part.past().map(p -> p.hours()).orElse(0.0);
    SpellEnds spells = new SpellEnds();
    spells.add(part, row.ageing(), row.ageing().pastHours(part.past(), past));
    return spells.logPowers(row.shape());
  }
}
