package meltkeeper.part;

import java.time.Duration;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A kind of part.
 *
 * @param name as the owner calls it, by the rule of {@link Names}
 * @param price of a new one, in the shop's currency, 0 or more
 * @param swapMinutes of labour to replace one, 0 or more
 * @param belief about its life, if the owner has one
 * @param habit the calendar interval that a saving is measured against, if the owner has one
 * @param cleaning what cleaning one takes, if the owner says
 * @param limitCelsius the temperature that it must not exceed, 0 to 600, if it has one
 */
public record Kind(
    String name,
    double price,
    double swapMinutes,
    Optional<Belief> belief,
    Optional<Duration> habit,
    Optional<CleaningPlan> cleaning,
    OptionalDouble limitCelsius) {

  /** A kind that stands any heat. */
  public Kind(
      String name,
      double price,
      double swapMinutes,
      Optional<Belief> belief,
      Optional<Duration> habit,
      Optional<CleaningPlan> cleaning) {
    this(name, price, swapMinutes, belief, habit, cleaning, OptionalDouble.empty());
  }

  public Kind {
    Names.checked("kind", name);
    if (!(price >= 0) || !(swapMinutes >= 0)) {
      throw new IllegalArgumentException(
          name + ": a price and a time are 0 or more, not " + price + " and " + swapMinutes);
    }
    if (!(limitCelsius.orElse(0) >= 0 && limitCelsius.orElse(0) <= 600)) {
      throw new IllegalArgumentException(name + ": a limit is 0 to 600 °C, not " + limitCelsius);
    }
  }
}
