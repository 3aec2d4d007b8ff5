package meltkeeper.pipeline;

import java.util.List;
import meltkeeper.jam.WatchState;
import meltkeeper.ledger.Account;
import meltkeeper.ledger.Bucket;
import meltkeeper.ledger.Tally;
import meltkeeper.part.Part;
import meltkeeper.protocol.HotEnd;
import meltkeeper.store.Commit;
import meltkeeper.store.Outbox;
import meltkeeper.store.Store;
import meltkeeper.store.StoreException;

/** A store whose commits fail while it is told to. */
final class FailingStore implements Store {

  private final Store store;
  private volatile boolean failing;

  FailingStore(Store store) {
    this.store = store;
  }

  void fail(boolean fails) {
    failing = fails;
  }

  @Override
  public void commit(Commit commit) {
    if (failing) {
      throw new StoreException("the disk is full");
    }
    store.commit(commit);
  }

  @Override
  public void claim() {
    store.claim();
  }

  @Override
  public List<Account> accounts() {
    return store.accounts();
  }

  @Override
  public List<WatchState> watches() {
    return store.watches();
  }

  @Override
  public List<Bucket> buckets(HotEnd hotEnd, long fromNanos, long untilNanos) {
    return store.buckets(hotEnd, fromNanos, untilNanos);
  }

  @Override
  public Tally tally(HotEnd hotEnd, long fromNanos, long untilNanos) {
    return store.tally(hotEnd, fromNanos, untilNanos);
  }

  @Override
  public long revision() {
    return store.revision();
  }

  @Override
  public List<Part> parts() {
    return store.parts();
  }

  @Override
  public boolean saveParts(long expectedRevision, List<Part> parts) {
    return store.saveParts(expectedRevision, parts);
  }

  @Override
  public boolean hasRecording(String digest) {
    return store.hasRecording(digest);
  }

  @Override
  public void keepRecording(String digest, String name, long atNanos, Commit last) {
    store.keepRecording(digest, name, atNanos, last);
  }

  @Override
  public Outbox outbox() {
    return store.outbox();
  }

  @Override
  public void close() {
    store.close();
  }
}
