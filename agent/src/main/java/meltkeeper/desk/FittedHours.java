package meltkeeper.desk;

import meltkeeper.ledger.Tally;
import meltkeeper.protocol.HotEnd;

/**
 * A part that is on a hot end, with what it takes to tell its hours at any later moment without
 * asking the store.
 *
 * @param base over its life up to the moment when it was read
 * @param totalThen the hot end's running total at that moment
 */
public record FittedHours(String id, String kind, HotEnd hotEnd, Tally base, Tally totalThen) {

  /** Over its life, once the hot end's running total stands at {@code totalNow}. */
  public Tally at(Tally totalNow) {
    return base.plus(totalNow.minus(totalThen));
  }
}
