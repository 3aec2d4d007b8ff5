package meltkeeper.store;

import java.util.List;
import meltkeeper.jam.WatchState;
import meltkeeper.ledger.Account;
import meltkeeper.ledger.Bucket;
import meltkeeper.ledger.Tally;
import meltkeeper.part.Part;
import meltkeeper.protocol.HotEnd;

/**
 * Facts, accounts and parts. Safe for use by several threads, and by several processes on the same
 * store; only {@link #commit} and {@link #keepRecording} are for the one process that holds {@link
 * #claim}. Every method throws {@link StoreException} when the store cannot be reached; then
 * nothing was changed, and the same call may succeed later.
 */
public interface Store extends AutoCloseable {

  /**
   * Makes this store object the one writer of credits until it is closed or its process dies; does
   * nothing when it is that already. {@link #commit} and {@link #keepRecording} claim by
   * themselves; to claim beforehand is to learn of another writer in time.
   *
   * @throws StoreException naming the process that holds it, when another does
   */
  void claim();

  /**
   * Carries out a commit, all of it or nothing. A bucket keeps the end that it was first given,
   * unless a cut shortens it; one whose facts have come to nothing is dropped.
   */
  void commit(Commit commit);

  /** The ledger's accounts, one a hot end that was ever credited, by hot end. */
  List<Account> accounts();

  /** What jam watches remembered when they were last kept, by hot end. */
  List<WatchState> watches();

  /**
   * The buckets that overlap {@code fromNanos} (inclusive) to {@code untilNanos} (exclusive), by
   * beginning; none when that is no time at all.
   */
  List<Bucket> buckets(HotEnd hotEnd, long fromNanos, long untilNanos);

  /**
   * The facts from {@code fromNanos} (inclusive) to {@code untilNanos} (exclusive): exactly the sum
   * of {@link Bucket#within} over {@link #buckets}, without reading each. Any two longs will do.
   */
  Tally tally(HotEnd hotEnd, long fromNanos, long untilNanos);

  /** A number that grows with every change of parts, made by whatever process; cheap to ask. */
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

  /**
   * Notes that the recording with that digest is credited, in one step with its last commit.
   *
   * @throws StoreException when it was credited before; nothing is committed then
   */
  void keepRecording(String digest, String name, long atNanos, Commit last);

  /** Its alerts; usable as long as the store is open. */
  Outbox outbox();

  /** Gives the claim back. May be called again. */
  @Override
  void close();
}
