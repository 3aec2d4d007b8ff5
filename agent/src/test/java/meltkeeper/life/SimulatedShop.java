package meltkeeper.life;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import meltkeeper.part.Belief;
import meltkeeper.part.Exposure;

/**
 * A shop whose parts live by a known law, as its ledger would tell of it: parts run one after
 * another at the shop's own mix of 222 °C and 237 °C, some are removed in good time, and it is
 * looked at when so many have failed.
 *
 * @param life the true one, in reference hours
 * @param halving the true interval, kelvin
 * @param hotShare share of its hours at 237 °C from now on
 * @param parts what the ledger tells
 */
record SimulatedShop(Weibull life, double halving, double hotShare, List<PartLife> parts) {

  private static final double COOL = 222;
  private static final double HOT = 237;

  /** A shop drawn from the belief. */
  static SimulatedShop drawn(Belief belief, int failures, Random random) {
    while (true) {
      double halving = belief.halving() + belief.halvingSpread() * random.nextGaussian();
      Weibull life =
          new Weibull(
              Math.log(belief.lifeHours()) + belief.spread() * random.nextGaussian(),
              Math.log(belief.shape()) + belief.shapeSpread() * random.nextGaussian());
      if (halving > Belief.MIN_HALVING) {
        SimulatedShop shop = of(belief, life, halving, failures, random);
        // Zero failures means the shops among which none happened, not lives without end.
        if (shop.parts().stream().filter(PartLife::hasFailed).count() == failures) {
          return shop;
        }
      }
    }
  }

  /** A shop with that truth. */
  static SimulatedShop of(
      Belief belief, Weibull life, double halving, int failures, Random random) {
    List<PartLife> parts = new ArrayList<>();
    int failed = 0;
    while (failures == 0 ? parts.size() < 3 : failed < failures) {
      double hot = random.nextInt(5) / 4.0;
      double rate = rate(belief, halving, hot);
      double end = life.quantile(random.nextDouble()) / rate;
      // Three parts in ten are meant for an early swap.
      double swap =
          failures > 0 && random.nextDouble() > 0.3
              ? Double.POSITIVE_INFINITY
              : 100 + 500 * random.nextDouble();
      String id = String.format("S-%04d", parts.size());
      parts.add(
          end < swap
              ? PartLife.of(id, mixed(hot, end), Lives.JAMMED)
              : PartLife.of(id, mixed(hot, swap), Lives.FITTED));
      failed += end < swap ? 1 : 0;
    }
    return new SimulatedShop(life, halving, random.nextInt(5) / 4.0, parts);
  }

  private static double rate(Belief belief, double halving, double hot) {
    return (1 - hot) * Thermal.halvingRate(COOL, belief.atCelsius(), halving)
        + hot * Thermal.halvingRate(HOT, belief.atCelsius(), halving);
  }

  private static Exposure mixed(double hot, double hours) {
    return Exposure.of(COOL, (1 - hot) * hours).plus(Exposure.of(HOT, hot * hours));
  }

  /** The hot time of an hour of its work from now on. */
  Exposure hour() {
    return mixed(hotShare, 1);
  }

  /** The true age of a new part after so many hours of its work. */
  double trueAge(Belief belief, double clockHours) {
    return clockHours * rate(belief, halving, hotShare);
  }
}
