package meltkeeper.life;

import java.util.OptionalDouble;
import org.hipparchus.analysis.integration.gauss.GaussIntegrator;
import org.hipparchus.analysis.integration.gauss.GaussIntegratorFactory;
import org.hipparchus.analysis.solvers.BracketingNthOrderBrentSolver;

/**
 * Replacement at a fixed age or at failure, whichever comes first: the long-run cost rate is C(t) =
 * (Cp R(t) + Cf F(t)) / ∫R (Barlow and Hunter 1960, from memory; stated also in ReliaWiki's optimum
 * replacement example). The search is global, because the hazard of a mixture need not rise.
 */
public final class AgeReplacement {

  private static final int PANELS = 80;
  private static final double SHORTEST = 1e-3;
  private static final double LONGEST = 50;

  /** An age that saves less than this share against waiting is no advice. */
  private static final double WORTH_NAMING = 1e-3;

  private final Mixture life;
  private final ReplacementCosts costs;
  private final GaussIntegrator unit = new GaussIntegratorFactory().legendre(4, 0, 1);
  private final double[] ages = new double[PANELS + 1];
  private final double[] alive = new double[PANELS + 1];
  private final double[] hours = new double[PANELS + 1];

  private AgeReplacement(Mixture life, ReplacementCosts costs) {
    this.life = life;
    this.costs = costs;
    double middle = life.middleHours();
    for (int i = 0; i <= PANELS; i++) {
      ages[i] = middle * SHORTEST * Math.pow(LONGEST / SHORTEST, i / (double) PANELS);
      alive[i] = life.survival(ages[i]);
      hours[i] = i == 0 ? integral(0, ages[0]) : hours[i - 1] + integral(ages[i - 1], ages[i]);
    }
  }

  /** For parts that are known to live so. */
  public static AgeReplacement of(Weibull life, ReplacementCosts costs) {
    return new AgeReplacement(Mixture.of(life), costs);
  }

  /** For parts of which this is believed. */
  public static AgeReplacement of(Posterior posterior, ReplacementCosts costs) {
    return new AgeReplacement(Mixture.of(posterior), costs);
  }

  /**
   * The cheapest age.
   *
   * @param at reference hours; empty when waiting for the failure is cheapest, or as good as
   * @param costPerHour at that age, or of waiting
   * @param waitingPerHour the cost of waiting for each failure
   */
  public record Cheapest(OptionalDouble at, double costPerHour, double waitingPerHour) {}

  /** The cost of waiting for each failure, per reference hour. */
  public double waitingPerHour() {
    return costs.failure() / life.meanHours();
  }

  /** The cost rate of replacing at that age, reference hours above 0. */
  public double costPerHour(double age) {
    int panel = panel(age);
    double before = panel < 0 ? integral(0, age) : hours[panel] + integral(ages[panel], age);
    return rate(life.survival(age), before);
  }

  /** The cheapest age of all. */
  public Cheapest cheapest() {
    int best = 0;
    for (int i = 1; i <= PANELS; i++) {
      if (rate(alive[i], hours[i]) < rate(alive[best], hours[best])) {
        best = i;
      }
    }
    double waiting = waitingPerHour();
    double at = best == 0 || best == PANELS ? ages[best] : refined(ages[best - 1], ages[best + 1]);
    double cost = costPerHour(at);
    return cost < waiting * (1 - WORTH_NAMING)
        ? new Cheapest(OptionalDouble.of(at), cost, waiting)
        : new Cheapest(OptionalDouble.empty(), waiting, waiting);
  }

  /** Where the slope of the cost rate changes its sign; the middle where it does not. */
  private double refined(double low, double high) {
    if (!(slope(low) < 0 && slope(high) > 0)) {
      return Math.sqrt(low * high);
    }
    return new BracketingNthOrderBrentSolver(1e-9, 1e-9, 1e-12, 5)
        .solve(100, this::slope, low, high);
  }

  /** Of the sign of dC/dt. */
  private double slope(double age) {
    int panel = panel(age);
    double before = panel < 0 ? integral(0, age) : hours[panel] + integral(ages[panel], age);
    double survival = life.survival(age);
    return costs.penalty() * life.density(age) * before
        - (costs.planned() * survival + costs.failure() * (1 - survival)) * survival;
  }

  private double rate(double survival, double meanHours) {
    return (costs.planned() * survival + costs.failure() * (1 - survival)) / meanHours;
  }

  private int panel(double age) {
    int found = java.util.Arrays.binarySearch(ages, age);
    return found >= 0 ? found : -found - 2;
  }

  private double integral(double from, double to) {
    double sum = 0;
    for (int i = 0; i < unit.getNumberOfPoints(); i++) {
      sum += unit.getWeight(i) * life.survival(from + (to - from) * unit.getPoint(i));
    }
    return sum * (to - from);
  }
}
