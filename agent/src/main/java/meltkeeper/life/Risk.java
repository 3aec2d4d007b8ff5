package meltkeeper.life;

import java.util.List;
import java.util.function.DoubleUnaryOperator;
import meltkeeper.part.Ending;
import meltkeeper.part.Exposure;

/** Whether a part gets through a batch, and what a new one would do. */
public final class Risk {

  private static final double LONGEST_HOURS = 1e5;

  private final Posterior posterior;

  public Risk(Posterior posterior) {
    this.posterior = posterior;
  }

  /**
   * P(fails within the batch | alive now), for a part that is itself among the data as alive at its
   * present age: the conditional probability averaged over the posterior.
   *
   * @param batch hours by temperature
   */
  public Estimate ofPart(PartLife part, Exposure batch) {
    return posterior.estimate(new FailureMeasure(part, batch));
  }

  /** The mean alone of {@link #ofPart}, at a fraction of its cost. */
  public double meanOfPart(PartLife part, Exposure batch) {
    return posterior.mean(new FailureMeasure(part, batch));
  }

  /**
   * The same probability for a part that is not among the data: its being alive at its age is news,
   * so it is 1 − E[R(age and batch)] / E[R(age)].
   */
  public double ofUnseenPart(PartLife part, Exposure batch) {
    double alive = aliveAfter(part, Exposure.NONE);
    return alive > 0 ? (alive - aliveAfter(part, batch)) / alive : meanOfPart(part, batch);
  }

  /** P(a new part fails within the batch). */
  public Estimate ofNewPart(Exposure batch) {
    return ofPart(PartLife.of("", Exposure.NONE, alive()), batch);
  }

  private static Ending alive() {
    return new Ending.Censored(Ending.Why.ON_SHELF);
  }

  /** P(alive after what it has run and the batch besides), from when it came into view. */
  private double aliveAfter(PartLife part, Exposure batch) {
    PartLife further = part.runningOn(batch);
    PastBelief past = PastBelief.of(part);
    double sum = 0;
    for (int r = 0; r < posterior.rows().size(); r++) {
      Row row = posterior.rows().get(r);
      for (int p = 0; p < past.size(); p++) {
        SpellEnds spells = new SpellEnds();
        spells.add(further, row.ageing(), row.ageing().pastHours(part.past(), past.hours(p)));
        double logPowers = spells.logPowers(row.shape());
        for (int k = 0; k < row.size(); k++) {
          sum +=
              posterior.weight(r)
                  * past.weight(p)
                  * row.share(k)
                  * Math.exp(-Math.exp(logPowers - row.shape() * row.logLife(k)));
        }
      }
    }
    return sum;
  }

  /**
   * The longest batch of that mix of temperatures whose mean risk stays at or below a limit, hours
   * by the clock; infinite when no batch under a hundred thousand hours reaches it.
   *
   * @param perHour what one hour of the batch is made of
   * @param atMost the limit, above 0 and below 1
   */
  public double longestHours(PartLife part, Exposure perHour, double atMost) {
    return longestHours(hours -> riskOf(part, perHour, hours), atMost);
  }

  /**
   * The same for a risk of any make that rises with the hours of the batch.
   *
   * @param riskOfHours 0 to 1
   */
  public static double longestHours(DoubleUnaryOperator riskOfHours, double atMost) {
    if (!(atMost > 0 && atMost < 1)) {
      throw new IllegalArgumentException("a risk lies between 0 and 1, not " + atMost);
    }
    double low = 0;
    double high = LONGEST_HOURS;
    if (riskOfHours.applyAsDouble(high) <= atMost) {
      return Double.POSITIVE_INFINITY;
    }
    while (high - low > 1e-4 * high) {
      double middle = low > 0 ? Math.sqrt(low * high) : high / 16;
      if (riskOfHours.applyAsDouble(middle) <= atMost) {
        low = middle;
      } else {
        high = middle;
      }
      if (high < 1e-6) {
        return 0;
      }
    }
    return low;
  }

  /** P(at least one fails), of parts that have nothing to do with each other. */
  public static double ofAny(List<Double> risks) {
    double allAlive = 0;
    for (double risk : risks) {
      allAlive += Math.log1p(-risk);
    }
    return -Math.expm1(allAlive);
  }

  /** P(fails within a batch of so many hours), the mean alone. */
  public double riskOf(PartLife part, Exposure perHour, double hours) {
    return posterior.mean(new FailureMeasure(part, perHour, hours));
  }
}
