package meltkeeper.outlook;

import java.util.Optional;

/**
 * What is asked of the shop's data.
 *
 * @param kind only that kind
 * @param spareDays how far ahead spares shall do, 1 or more
 * @param confidence with which they shall do, above 0 and below 1
 * @param explained with the data and the checks behind the answer
 */
public record LifeQuestion(
    Optional<String> kind, int spareDays, double confidence, boolean explained) {

  /** Of one kind or all, else the usual. */
  public static LifeQuestion ofKind(Optional<String> kind) {
    return new LifeQuestion(kind, USUAL.spareDays(), USUAL.confidence(), false);
  }

  /** All kinds, spares for 60 days at 95 %. */
  public static final LifeQuestion USUAL = new LifeQuestion(Optional.empty(), 60, 0.95, false);
}
