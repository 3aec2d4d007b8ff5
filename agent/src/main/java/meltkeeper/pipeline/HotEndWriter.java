package meltkeeper.pipeline;

import java.util.ArrayList;
import java.util.List;
import java.util.NavigableSet;
import java.util.Optional;
import java.util.TreeSet;
import meltkeeper.jam.Finding;
import meltkeeper.jam.Watch;
import meltkeeper.jam.WatchState;
import meltkeeper.ledger.Account;
import meltkeeper.ledger.Bucket;
import meltkeeper.ledger.Credits;
import meltkeeper.ledger.Grid;
import meltkeeper.ledger.Ledger;
import meltkeeper.ledger.Tally;
import meltkeeper.ledger.Verdict;
import meltkeeper.protocol.HotEnd;
import meltkeeper.protocol.Reading;
import meltkeeper.store.Commit;

/** One hot end's account and what it has earned since the last commit. Mutable, for one thread. */
final class HotEndWriter {

  private final HotEnd hotEnd;
  private final Ledger ledger;
  private final Values values = new Values();
  private final Recent recent = new Recent();
  private final Watching watching;
  private final Trail trail = new Trail();
  private Grid grid;
  private Account account;
  private Credits credits;
  private boolean moved;

  HotEndWriter(Account account, Ledger ledger, Grid grid, Watch watch) {
    this.watching = new Watching(watch);
    this.hotEnd = account.hotEnd();
    this.ledger = ledger;
    this.account = account;
    this.grid = grid;
    this.credits = new Credits(hotEnd, grid);
  }

  /** What came of a reading. */
  record Taken(Verdict verdict, Optional<Finding> finding) {}

  Taken take(Reading reading) {
    Ledger.Step step = ledger.step(account, reading, credits);
    recent.note(account, reading);
    account = step.account();
    moved = true;
    if (step.verdict() == Verdict.TAKEN || step.verdict() == Verdict.RETAINED) {
      values.show(reading);
      trail.take(reading, () -> settled().total(), watching::outlook);
      return new Taken(step.verdict(), watching.take(reading));
    }
    return new Taken(step.verdict(), Optional.empty());
  }

  /** True when there is something to commit. */
  boolean hasMoved() {
    return moved;
  }

  List<Bucket> earned() {
    return credits.buckets();
  }

  /** The account with everything earned in its total. */
  Account settled() {
    return account.credited(credits.sum());
  }

  /** What its watch remembers, when that is to be kept. */
  Optional<WatchState> watchToKeep(boolean always) {
    return always || watching.isDue() ? Optional.of(watching.state()) : Optional.empty();
  }

  /** Called once what was earned is safely stored. */
  void committed() {
    account = settled();
    credits = new Credits(hotEnd, grid);
    moved = false;
    if (watching.isDue()) {
      watching.kept();
    }
  }

  HotEndLive live() {
    return values.snapshot(hotEnd, account.total(), watching.outlook(), watching.blindNanos());
  }

  Trail trail() {
    return trail;
  }

  /** True when none of these times is an edge yet. */
  boolean lacks(NavigableSet<Long> cuts) {
    return !grid.cuts().containsAll(cuts);
  }

  /**
   * Cuts the buckets at more times. Call after a commit: what the store holds is moved between its
   * buckets where the readings are still known, and stays whole where they are not.
   */
  Commit cut(NavigableSet<Long> cuts) {
    NavigableSet<Long> known = new TreeSet<>(grid.cuts());
    NavigableSet<Long> added = new TreeSet<>(cuts);
    added.removeAll(known);
    known.addAll(added);
    watching.partSwapped(added.last());
    Grid before = grid;
    grid = new Grid(known);
    credits = new Credits(hotEnd, grid);
    added.removeIf(cut -> !recent.covers(cut));
    if (added.isEmpty()) {
      return new Commit(List.of(), List.of(), List.of());
    }
    NavigableSet<Long> exact = new TreeSet<>(before.cuts());
    exact.addAll(added);
    Grid recut = new Grid(exact);
    List<Commit.Cut> shortened = new ArrayList<>();
    for (long cut : added) {
      shortened.add(new Commit.Cut(hotEnd, recut.edgeBefore(cut), cut));
    }
    List<Bucket> moves = new ArrayList<>();
    for (Bucket stale : recent.creditedOn(before, ledger, hotEnd).buckets()) {
      moves.add(
          new Bucket(
              hotEnd, stale.fromNanos(), stale.untilNanos(), Tally.NONE.minus(stale.tally())));
    }
    moves.addAll(recent.creditedOn(recut, ledger, hotEnd).buckets());
    return new Commit(moves, shortened, List.of());
  }
}
