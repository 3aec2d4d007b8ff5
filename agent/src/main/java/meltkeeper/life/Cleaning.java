package meltkeeper.life;

import java.util.OptionalDouble;
import java.util.stream.IntStream;

/**
 * Whether cleaning a part and using it again pays.
 *
 * <p>The rule that is costed: clean when the part reaches a virtual age, up to n times, then
 * replace it; a failure ends it at any time. With q = 1 − r each spell after the first runs from q
 * T to T, so the expected cost and hours of a part have closed forms, averaged over all that is
 * believed.
 *
 * @param restores share of its age that a cleaning undoes, as learned
 * @param times how often to clean a part before it is replaced; 0 when buying new is cheapest
 * @param at the virtual age to clean at, reference hours; empty when cleaning does not pay
 * @param costPer1000Hours of the best rule that cleans at least once
 * @param buyNewCostPer1000Hours of the best rule that never cleans
 */
public record Cleaning(
    Estimate restores,
    int times,
    OptionalDouble at,
    double costPer1000Hours,
    double buyNewCostPer1000Hours) {

  private static final int MOST_TIMES = 6;
  private static final int AGES = 40;
  private static final double SHORTEST = 0.05;
  private static final double LONGEST = 4;

  /** True when the shop saves money by it. */
  public boolean pays() {
    return times > 0;
  }

  /** The best rule for a shop. */
  public static Cleaning of(Posterior posterior, ReplacementCosts costs, CleaningCosts cleaning) {
    double buyNew = AgeReplacement.of(posterior, costs).cheapest().costPerHour();
    double middle = Mixture.of(posterior).middleHours();
    double best = Double.POSITIVE_INFINITY;
    double bestAge = middle;
    int bestTimes = 1;
    for (int i = 0; i < AGES; i++) {
      double age = middle * SHORTEST * Math.pow(LONGEST / SHORTEST, i / (AGES - 1.0));
      double[] rates = costPerHour(posterior, costs, cleaning, age);
      for (int n = 1; n <= MOST_TIMES; n++) {
        if (rates[n] < best) {
          best = rates[n];
          bestAge = age;
          bestTimes = n;
        }
      }
    }
    boolean pays = best < buyNew;
    return new Cleaning(
        CleaningOpinions.restores(posterior, cleaning.restores()),
        pays ? bestTimes : 0,
        pays ? OptionalDouble.of(bestAge) : OptionalDouble.empty(),
        1000 * best,
        1000 * buyNew);
  }

  /** Cost per reference hour of cleaning at an age, by how often: 0 to the most times. */
  static double[] costPerHour(
      Posterior posterior, ReplacementCosts costs, CleaningCosts cleaning, double age) {
    double[] money = new double[MOST_TIMES + 1];
    double[] hours = new double[MOST_TIMES + 1];
    for (int r = 0; r < posterior.rows().size(); r++) {
      Row row = posterior.rows().get(r);
      double kept = 1 - row.ageing().restores(cleaning.restores());
      for (int k = 0; k < row.size(); k++) {
        double weight = posterior.weight(r) * row.share(k);
        if (weight > 1e-7) {
          add(
              money,
              hours,
              weight,
              new Weibull(row.logLife(k), row.logShape()),
              kept,
              age,
              costs,
              cleaning.money());
        }
      }
    }
    return IntStream.rangeClosed(0, MOST_TIMES).mapToDouble(n -> money[n] / hours[n]).toArray();
  }

  private static void add(
      double[] money,
      double[] hours,
      double weight,
      Weibull life,
      double kept,
      double age,
      ReplacementCosts costs,
      double cleaning) {
    double first = life.meanHoursUntil(age);
    double alive = life.survival(age);
    double aliveBefore = life.survival(kept * age);
    double again = aliveBefore > 0 ? alive / aliveBefore : 0;
    double spell = aliveBefore > 0 ? (first - life.meanHoursUntil(kept * age)) / aliveBefore : 0;
    double expectedHours = first;
    double cleanings = 0;
    for (int n = 0; n < money.length; n++) {
      money[n] += weight * (costs.failure() - costs.penalty() * alive + cleaning * cleanings);
      hours[n] += weight * expectedHours;
      cleanings += alive;
      expectedHours += alive * spell;
      alive *= again;
    }
  }
}
