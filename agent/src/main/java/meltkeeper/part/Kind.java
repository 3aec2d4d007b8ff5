package meltkeeper.part;

import java.time.Duration;
import java.util.Optional;

/**
 * A kind of part.
 *
 * @param name as the owner calls it, by the rule of {@link Names}
 * @param price of a new one, in the shop's currency, 0 or more
 * @param swapMinutes of labour to replace one, 0 or more
 * @param belief about its life, if the owner has one
 * @param habit the calendar interval that a saving is measured against, if the owner has one
 * @param cleaning what cleaning one takes, if the owner says
 */
public record Kind(
    String name,
    double price,
    double swapMinutes,
    Optional<Belief> belief,
    Optional<Duration> habit,
    Optional<CleaningPlan> cleaning) {

  public Kind {
    Names.checked("kind", name);
    if (!(price >= 0) || !(swapMinutes >= 0)) {
      throw new IllegalArgumentException(
          name + ": a price and a time are 0 or more, not " + price + " and " + swapMinutes);
    }
  }
}
