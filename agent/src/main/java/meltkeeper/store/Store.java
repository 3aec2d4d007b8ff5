package meltkeeper.store;

import java.util.List;
import meltkeeper.ledger.Account;
import meltkeeper.ledger.Bucket;
import meltkeeper.ledger.Tally;
import meltkeeper.part.Part;
import meltkeeper.protocol.HotEnd;

/**
 * Facts, accounts and parts. Safe for use by several threads, and by several processes on the same
 * store; only {@link #commit} and {@link #keepRecording} are for the one process that holds {@link
 * #claim}. Every method throws {@link StoreException} when the store cannot be reached.
 */
public interface Store extends AutoCloseable {

  /**
   * Makes this process the store's one writer of credits until it closes or dies.
   *
   * @throws StoreException naming the process that holds it, when another does
   */
  void claim();

  /** Carries out a commit, all of it or nothing. */
  void commit(Commit commit);

  /** The ledger's accounts, one a hot end that was ever credited. */
  List<Account> accounts();

  /** The buckets that overlap {@code fromNanos} (inclusive) to {@code untilNanos}, by beginning. */
  List<Bucket> buckets(HotEnd hotEnd, long fromNanos, long untilNanos);

  /**
   * The facts from {@code fromNanos} (inclusive) to {@code untilNanos}; a bucket at either end
   * gives its share as {@link Bucket#within} says.
   */
  Tally tally(HotEnd hotEnd, long fromNanos, long untilNanos);

  /** A number that grows with every change of parts, made by whatever process. */
  long revision();

  /** Every part that was ever known, by id. */
  List<Part> parts();

  /**
   * Replaces or adds the parts, if the revision is still {@code expectedRevision}; else changes
   * nothing.
   *
   * @return true when done
   */
  boolean saveParts(long expectedRevision, List<Part> parts);

  /** True when the recording with that digest was credited before. */
  boolean hasRecording(String digest);

  /** Notes that the recording with that digest is credited, in one step with its last commit. */
  void keepRecording(String digest, String name, long atNanos, Commit last);

  @Override
  void close();
}
