package meltkeeper.life;

import meltkeeper.part.Exposure;

/**
 * A shop that swaps by the calendar.
 *
 * @param betweenSwaps the hot time that a part sees from one swap to the next
 */
public record CalendarHabit(Exposure betweenSwaps) {

  /** What the habit costs per reference hour, over all that is believed. */
  public double costPerHour(Posterior posterior, ReplacementCosts costs) {
    double money = 0;
    double hours = 0;
    for (int r = 0; r < posterior.rows().size(); r++) {
      Row row = posterior.rows().get(r);
      double age = row.ageing().hours(betweenSwaps);
      for (int k = 0; k < row.size(); k++) {
        Weibull life = new Weibull(row.logLife(k), row.logShape());
        double weight = posterior.weight(r) * row.share(k);
        money += weight * (costs.failure() - costs.penalty() * life.survival(age));
        hours += weight * life.meanHoursUntil(age);
      }
    }
    return hours > 0 ? money / hours : Double.POSITIVE_INFINITY;
  }

  /** The habit in reference hours, on average. */
  public double meanAge(Posterior posterior) {
    return posterior.expectation(row -> row.ageing().hours(betweenSwaps));
  }
}
