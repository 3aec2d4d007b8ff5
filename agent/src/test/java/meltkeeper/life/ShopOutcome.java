package meltkeeper.life;

import java.util.List;
import meltkeeper.part.Exposure;

/**
 * How the answer for a {@link SimulatedShop} compares with the truth.
 *
 * @param lifeCovered whether the 90 % interval of life holds the truth; likewise shape and halving
 * @param regret of the advised age: extra cost rate against one who knows the truth, 0 is perfect
 * @param habitRegret the same of a swap every 600 hours by the clock (60 days of 10 hours)
 */
record ShopOutcome(
    boolean lifeCovered,
    boolean shapeCovered,
    boolean halvingCovered,
    double regret,
    double habitRegret) {

  private static final ReplacementCosts COSTS = new ReplacementCosts(10.75, 28.75);
  private static final double HABIT_HOURS = 600;

  static ShopOutcome of(SimulatedShop shop) {
    Posterior posterior = Posterior.of(Lives.LINER, shop.parts());
    AgeReplacement truth = AgeReplacement.of(shop.life(), COSTS);
    double oracle = truth.cheapest().costPerHour();
    AgeReplacement.Cheapest advised = AgeReplacement.of(posterior, COSTS).cheapest();
    double cost = truth.waitingPerHour();
    if (advised.at().isPresent()) {
      // The shop counts the age by the halving interval that it has learned, not by the true one.
      PartLife fresh = PartLife.of("new", Exposure.NONE, Lives.FITTED);
      double clockHours =
          DueIn.hours(posterior, fresh, advised.at().getAsDouble(), shop.hour()).p50();
      cost = truth.costPerHour(shop.trueAge(Lives.LINER, clockHours));
    }
    double habit = truth.costPerHour(shop.trueAge(Lives.LINER, HABIT_HOURS));
    return new ShopOutcome(
        holds(posterior.lifeHours(), shop.life().lifeHours()),
        holds(posterior.shape(), shop.life().shape()),
        holds(posterior.halving(), shop.halving()),
        cost / oracle - 1,
        habit / oracle - 1);
  }

  private static boolean holds(Estimate estimate, double truth) {
    return estimate.p5() <= truth && truth <= estimate.p95();
  }

  /** The middle one of sorted regrets, or any other share of them. */
  static double at(List<Double> regrets, double share) {
    return regrets.stream()
        .sorted()
        .skip((long) (share * (regrets.size() - 1)))
        .findFirst()
        .orElseThrow();
  }
}
