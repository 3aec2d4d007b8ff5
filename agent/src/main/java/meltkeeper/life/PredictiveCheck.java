package meltkeeper.life;

import java.util.ArrayList;
import java.util.Arrays;
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
      int failures = part.failures();
      double[] hazards = new double[failures + 1];
      double[] shares = new double[failures + 1];
      for (int r = 0; r < posterior.rows().size(); r++) {
        Row row = posterior.rows().get(r);
        List<SpellEnds> stretches = stretches(part, row);
        for (int i = 0; i < stretches.size(); i++) {
          double logPowers = stretches.get(i).logPowers(row.shape());
          for (int k = 0; k < row.size(); k++) {
            double ranThrough = Math.exp(logPowers - row.shape() * row.logLife(k));
            double weight = posterior.weight(r) * row.share(k);
            hazards[i] += weight * ranThrough;
            shares[i] -= weight * Math.expm1(-ranThrough);
          }
        }
      }
      expected += Arrays.stream(hazards).sum();
      for (int i = 0; i < failures; i++) {
        places.add(new Place(part.id(), shares[i]));
      }
    }
    return new PredictiveCheck(posterior.failures(), expected, places);
  }

  private static List<SpellEnds> stretches(PartLife part, Row row) {
    double past = part.past().map(p -> p.hours()).orElse(0.0);
    return SpellEnds.byFailure(part, row.ageing(), row.ageing().pastHours(part.past(), past));
  }
}
