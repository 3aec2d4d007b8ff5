package meltkeeper.store;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import java.util.Set;
import java.util.TreeMap;
import meltkeeper.jam.WatchState;
import meltkeeper.ledger.Account;
import meltkeeper.ledger.Bucket;
import meltkeeper.ledger.Tally;
import meltkeeper.part.Part;
import meltkeeper.protocol.HotEnd;

/** A store that is forgotten with its process. Safe for use by several threads. */
public final class MemoryStore implements Store {

  private final Map<HotEnd, NavigableMap<Long, Bucket>> facts = new HashMap<>();
  private final NavigableMap<HotEnd, Account> accounts = new TreeMap<>();
  private final NavigableMap<HotEnd, WatchState> watches = new TreeMap<>();
  private final NavigableMap<String, Part> parts = new TreeMap<>();
  private final Set<String> recordings = new HashSet<>();
  private final MemoryOutbox outbox = new MemoryOutbox();
  private long revision;

  private record Key(HotEnd hotEnd, long fromNanos) {}

  /** Nobody else can reach it: there is nothing to claim. */
  @Override
  public void claim() {}

  @Override
  public synchronized void commit(Commit commit) {
    staged(commit).values().forEach(this::keep);
    commit.accounts().forEach(account -> accounts.put(account.hotEnd(), account));
    commit.watches().forEach(watch -> watches.put(watch.hotEnd(), watch));
    outbox.post(commit.postings());
  }

  /** The buckets that change, as they will be: an overflow among them leaves all as it was. */
  private Map<Key, Bucket> staged(Commit commit) {
    Map<Key, Bucket> staged = new HashMap<>();
    for (Commit.Cut cut : commit.cuts()) {
      Bucket bucket = of(cut.hotEnd()).get(cut.fromNanos());
      if (bucket != null) {
        staged.merge(
            new Key(cut.hotEnd(), cut.fromNanos()),
            endingBy(cut.untilNanos(), bucket),
            (one, other) -> endingBy(one.untilNanos(), other));
      }
    }
    for (Bucket credit : commit.credits()) {
      Key key = new Key(credit.hotEnd(), credit.fromNanos());
      Bucket stored = staged.get(key);
      if (stored == null) {
        stored = of(credit.hotEnd()).get(credit.fromNanos());
      }
      staged.put(key, stored == null ? credit : withMore(stored, credit.tally()));
    }
    return staged;
  }

  private static Bucket endingBy(long untilNanos, Bucket bucket) {
    return new Bucket(
        bucket.hotEnd(),
        bucket.fromNanos(),
        Math.min(untilNanos, bucket.untilNanos()),
        bucket.tally());
  }

  private static Bucket withMore(Bucket bucket, Tally more) {
    return new Bucket(
        bucket.hotEnd(), bucket.fromNanos(), bucket.untilNanos(), bucket.tally().plus(more));
  }

  private void keep(Bucket bucket) {
    if (bucket.tally().equals(Tally.NONE)) {
      of(bucket.hotEnd()).remove(bucket.fromNanos());
    } else {
      of(bucket.hotEnd()).put(bucket.fromNanos(), bucket);
    }
  }

  private NavigableMap<Long, Bucket> of(HotEnd hotEnd) {
    return facts.computeIfAbsent(hotEnd, h -> new TreeMap<>());
  }

  @Override
  public synchronized List<Account> accounts() {
    return List.copyOf(accounts.values());
  }

  @Override
  public synchronized List<WatchState> watches() {
    return List.copyOf(watches.values());
  }

  @Override
  public synchronized List<Bucket> buckets(HotEnd hotEnd, long fromNanos, long untilNanos) {
    List<Bucket> overlapping = new ArrayList<>();
    if (fromNanos < untilNanos) {
      long earliest = Math.max(fromNanos, Long.MIN_VALUE + Bucket.LENGTH_NANOS);
      long after = earliest - Bucket.LENGTH_NANOS;
      for (Bucket bucket : of(hotEnd).subMap(after, true, untilNanos, false).values()) {
        if (bucket.untilNanos() > fromNanos) {
          overlapping.add(bucket);
        }
      }
    }
    return overlapping;
  }

  @Override
  public Tally tally(HotEnd hotEnd, long fromNanos, long untilNanos) {
    Tally sum = Tally.NONE;
    for (Bucket bucket : buckets(hotEnd, fromNanos, untilNanos)) {
      sum = sum.plus(bucket.within(fromNanos, untilNanos));
    }
    return sum;
  }

  @Override
  public synchronized long revision() {
    return revision;
  }

  @Override
  public synchronized List<Part> parts() {
    return List.copyOf(parts.values());
  }

  @Override
  public synchronized boolean saveParts(long expectedRevision, List<Part> changed) {
    if (revision != expectedRevision) {
      return false;
    }
    changed.forEach(part -> parts.put(part.id(), part));
    revision++;
    return true;
  }

  @Override
  public synchronized boolean hasRecording(String digest) {
    return recordings.contains(digest);
  }

  @Override
  public synchronized void keepRecording(String digest, String name, long atNanos, Commit last) {
    if (recordings.contains(digest)) {
      throw StoreException.recordingKnown(name);
    }
    commit(last);
    recordings.add(digest);
  }

  @Override
  public Outbox outbox() {
    return outbox;
  }

  @Override
  public void close() {}
}
