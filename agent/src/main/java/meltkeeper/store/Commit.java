package meltkeeper.store;

import java.util.List;
import meltkeeper.ledger.Account;
import meltkeeper.ledger.Bucket;
import meltkeeper.protocol.HotEnd;

/**
 * What the one writer hands over, all of it or nothing.
 *
 * @param credits to be added to the buckets of the same hot end and beginning; amounts may be
 *     negative when a cut moves them
 * @param cuts stored buckets that end earlier from now on; carried out before the credits
 * @param accounts as they stand after the last reading that is credited here; the others stay
 */
public record Commit(List<Bucket> credits, List<Cut> cuts, List<Account> accounts) {

  public Commit {
    credits = List.copyOf(credits);
    cuts = List.copyOf(cuts);
    accounts = List.copyOf(accounts);
  }

  /** The bucket that begins at {@code fromNanos}, if there is one, ends at {@code untilNanos}. */
  public record Cut(HotEnd hotEnd, long fromNanos, long untilNanos) {}

  public boolean isEmpty() {
    return credits.isEmpty() && cuts.isEmpty() && accounts.isEmpty();
  }
}
