package meltkeeper.life;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.function.Predicate;
import java.util.function.ToDoubleFunction;

/**
 * Prints how well the life model is calibrated: for shops drawn from the belief and for shops
 * outside it, how often 90 % intervals hold the truth, and what the advised age costs against one
 * who knows the truth and against a calendar. Its table stands in docs/life.md.
 */
public final class Calibration {

  private static final int[] FAILURES = {0, 1, 3, 10, 30};

  private Calibration() {}

  /** A rule by which shops are made. */
  private interface Shops {
    SimulatedShop next(int failures, Random random);
  }

  /** Takes the number of shops in each row, 300 where none is given. */
  public static void main(String[] arguments) {
    int shops = arguments.length > 0 ? Integer.parseInt(arguments[0]) : 300;
    System.out.println(
        "| shops | failures | life | shape | halving | regret: median | 90 % | calendar: median"
            + " | advice cheaper |");
    System.out.println("|---|---|---|---|---|---|---|---|---|");
    print("drawn from the belief", shops, (f, r) -> SimulatedShop.drawn(Lives.LINER, f, r));
    print("shape 1.2", shops, (f, r) -> outside(f, r, 1.2, 10));
    print("halving 20 K", shops, (f, r) -> outside(f, r, 2.5, 20));
  }

  private static SimulatedShop outside(int failures, Random random, double shape, double halving) {
    double life = 600 * Math.exp(Lives.LINER.spread() * random.nextGaussian());
    while (true) {
      SimulatedShop shop =
          SimulatedShop.of(Lives.LINER, Weibull.of(life, shape), halving, failures, random);
      if (shop.parts().stream().filter(PartLife::hasFailed).count() == failures) {
        return shop;
      }
    }
  }

  private static void print(String what, int shops, Shops source) {
    for (int failures : FAILURES) {
      Random random = new Random(1000 + failures);
      List<ShopOutcome> outcomes = new ArrayList<>();
      for (int i = 0; i < shops; i++) {
        outcomes.add(ShopOutcome.of(source.next(failures, random)));
      }
      System.out.printf(
          Locale.ROOT,
          "| %s | %d | %.0f %% | %.0f %% | %.0f %% | %.1f %% | %.1f %% | %.1f %% | %.0f %% |%n",
          what,
          failures,
          share(outcomes, ShopOutcome::lifeCovered),
          share(outcomes, ShopOutcome::shapeCovered),
          share(outcomes, ShopOutcome::halvingCovered),
          regret(outcomes, ShopOutcome::regret, 0.5),
          regret(outcomes, ShopOutcome::regret, 0.9),
          regret(outcomes, ShopOutcome::habitRegret, 0.5),
          share(outcomes, o -> o.regret() < o.habitRegret()));
    }
  }

  private static double share(List<ShopOutcome> outcomes, Predicate<ShopOutcome> holds) {
    return 100.0 * outcomes.stream().filter(holds).count() / outcomes.size();
  }

  private static double regret(
      List<ShopOutcome> outcomes, ToDoubleFunction<ShopOutcome> which, double share) {
    return 100 * ShopOutcome.at(outcomes.stream().map(o -> which.applyAsDouble(o)).toList(), share);
  }
}
