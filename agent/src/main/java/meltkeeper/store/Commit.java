package meltkeeper.store;

import java.util.List;
import meltkeeper.jam.WatchState;
import meltkeeper.ledger.Account;
import meltkeeper.ledger.Bucket;
import meltkeeper.protocol.HotEnd;

/**
 * What the one writer hands over, all of it or nothing.
 *
 * @param credits to be added to the buckets of the same hot end and beginning; amounts may be
 *     negative when a cut moves them; none is longer than {@link Bucket#LENGTH_NANOS}
 * @param cuts stored buckets that end earlier from now on; carried out before the credits
 * @param accounts as they stand after the last reading that is credited here; the others stay
 * @param postings alerts that the same readings caused
 * @param watches what jam watches remember, those that are due to be kept; the others stay
 */
public record Commit(
    List<Bucket> credits,
    List<Cut> cuts,
    List<Account> accounts,
    List<Posting> postings,
    List<WatchState> watches) {

  /** A commit that changes nothing. */
  public static final Commit NOTHING = new Commit(List.of(), List.of(), List.of());

  /** A commit that calls nobody. */
  public Commit(List<Bucket> credits, List<Cut> cuts, List<Account> accounts) {
    this(credits, cuts, accounts, List.of(), List.of());
  }

  public Commit {
    credits = List.copyOf(credits);
    cuts = List.copyOf(cuts);
    accounts = List.copyOf(accounts);
    postings = List.copyOf(postings);
    watches = List.copyOf(watches);
    for (Bucket credit : credits) {
      if (Math.subtractExact(credit.untilNanos(), credit.fromNanos()) > Bucket.LENGTH_NANOS) {
        throw new IllegalArgumentException(
            "a bucket of "
                + credit.hotEnd()
                + " is at most "
                + Bucket.LENGTH_NANOS
                + " ns long, not from "
                + credit.fromNanos()
                + " to "
                + credit.untilNanos());
      }
    }
  }

  /**
   * The bucket that begins at {@code fromNanos} ends at {@code untilNanos}, if there is one and it
   * ends later.
   */
  public record Cut(HotEnd hotEnd, long fromNanos, long untilNanos) {
    public Cut {
      if (!(fromNanos < untilNanos)) {
        throw new IllegalArgumentException(
            "a cut bucket ends after it begins, not from " + fromNanos + " to " + untilNanos);
      }
    }
  }

  public boolean isEmpty() {
    return credits.isEmpty()
        && cuts.isEmpty()
        && accounts.isEmpty()
        && postings.isEmpty()
        && watches.isEmpty();
  }
}
