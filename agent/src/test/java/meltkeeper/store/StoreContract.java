package meltkeeper.store;

import static meltkeeper.store.StoreFixture.HERON;
import static meltkeeper.store.StoreFixture.IBIS;
import static meltkeeper.store.StoreFixture.MORNING;
import static meltkeeper.store.StoreFixture.SECOND;
import static meltkeeper.store.StoreFixture.account;
import static meltkeeper.store.StoreFixture.anyBuckets;
import static meltkeeper.store.StoreFixture.bucket;
import static meltkeeper.store.StoreFixture.credits;
import static meltkeeper.store.StoreFixture.hot;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.TreeMap;
import meltkeeper.jam.WatchState;
import meltkeeper.ledger.Bucket;
import meltkeeper.ledger.Tally;
import meltkeeper.part.Because;
import meltkeeper.part.Ending;
import meltkeeper.part.Exposure;
import meltkeeper.part.Part;
import meltkeeper.part.PartEvent;
import meltkeeper.part.PriorPast;
import meltkeeper.protocol.HotEnd;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What every store must do. */
public abstract class StoreContract {

  private static final long ALWAYS = Long.MIN_VALUE;
  private static final long EVER = Long.MAX_VALUE;

  private Store store;

  protected abstract Store open();

  @BeforeEach
  void openStore() {
    store = open();
  }

  @AfterEach
  void closeStore() {
    store.close();
  }

  @Test
  void watches_areKeptWithTheCommit_theLatestOfEachHotEnd() {
    WatchState first = new WatchState(HERON, new TreeMap<>(Map.of("period", "2.0")));
    WatchState later =
        new WatchState(HERON, new TreeMap<>(Map.of("period", "2.5", "level", "CLEAR")));
    WatchState other = new WatchState(IBIS, new TreeMap<>());
    assertThat(store.watches()).isEmpty();
    store.commit(new Commit(List.of(), List.of(), List.of(), List.of(), List.of(first, other)));
    store.commit(new Commit(List.of(), List.of(), List.of(), List.of(), List.of(later)));
    store.commit(new Commit(List.of(), List.of(), List.of(account(IBIS, hot(240, 3)))));
    assertThat(store.watches()).containsExactly(later, other);
  }

  @Test
  void newStore_isEmpty() {
    assertThat(store.accounts()).isEmpty();
    assertThat(store.buckets(HERON, ALWAYS, EVER)).isEmpty();
    assertThat(store.tally(HERON, ALWAYS, EVER)).isEqualTo(Tally.NONE);
    assertThat(store.parts()).isEmpty();
    assertThat(store.revision()).isZero();
    assertThat(store.hasRecording("a")).isFalse();
  }

  @Test
  void commit_sameBucketTwice_adds() {
    store.commit(credits(bucket(HERON, 0, hot(215, 10))));
    store.commit(credits(bucket(HERON, 0, hot(215, 5)), bucket(HERON, 0, hot(220, 7))));

    assertThat(store.buckets(HERON, ALWAYS, EVER))
        .containsExactly(bucket(HERON, 0, hot(215, 15).plus(hot(220, 7))));
  }

  @Test
  void commit_severalHotEnds_keepsThemApart() {
    store.commit(credits(bucket(HERON, 0, hot(215, 10)), bucket(IBIS, 0, hot(240, 20))));

    assertThat(store.buckets(HERON, ALWAYS, EVER)).containsExactly(bucket(HERON, 0, hot(215, 10)));
    assertThat(store.tally(IBIS, ALWAYS, EVER)).isEqualTo(hot(240, 20));
    assertThat(store.tally(new HotEnd("ibis", 0), ALWAYS, EVER)).isEqualTo(Tally.NONE);
  }

  @Test
  void commit_bucketWithAnotherEnd_keepsTheFirstEnd() {
    Bucket whole = bucket(HERON, 0, hot(215, 10));
    store.commit(credits(whole));
    store.commit(
        credits(new Bucket(HERON, whole.fromNanos(), whole.fromNanos() + SECOND, hot(215, 1))));

    assertThat(store.buckets(HERON, ALWAYS, EVER)).containsExactly(bucket(HERON, 0, hot(215, 11)));
  }

  @Test
  void commit_withCut_shortensTheBucketBeforeItCredits() {
    long cut = MORNING + 100 * SECOND;
    store.commit(credits(bucket(HERON, 0, hot(215, 300))));
    Tally moved = hot(215, 200);
    store.commit(
        new Commit(
            List.of(
                bucket(HERON, 0, Tally.NONE.minus(moved)),
                new Bucket(HERON, cut, MORNING + Bucket.LENGTH_NANOS, moved)),
            List.of(new Commit.Cut(HERON, MORNING, cut)),
            List.of()));

    assertThat(store.buckets(HERON, ALWAYS, EVER))
        .containsExactly(
            new Bucket(HERON, MORNING, cut, hot(215, 100)),
            new Bucket(HERON, cut, MORNING + Bucket.LENGTH_NANOS, moved));
  }

  @Test
  void cut_laterThanTheEndOrOfNoBucket_changesNothing() {
    Bucket short1 = new Bucket(HERON, MORNING, MORNING + 60 * SECOND, hot(215, 60));
    store.commit(credits(short1));
    store.commit(
        new Commit(
            List.of(),
            List.of(
                new Commit.Cut(HERON, MORNING, MORNING + 90 * SECOND),
                new Commit.Cut(HERON, MORNING + SECOND, MORNING + 2 * SECOND),
                new Commit.Cut(IBIS, MORNING, MORNING + SECOND)),
            List.of()));

    assertThat(store.buckets(HERON, ALWAYS, EVER)).containsExactly(short1);
    assertThat(store.buckets(IBIS, ALWAYS, EVER)).isEmpty();
  }

  @Test
  void commit_factsThatComeToNothing_dropsTheBucket() {
    store.commit(credits(bucket(HERON, 0, hot(215, 10)), bucket(HERON, 1, hot(215, 20))));
    store.commit(credits(bucket(HERON, 0, Tally.NONE.minus(hot(215, 10)))));

    assertThat(store.buckets(HERON, ALWAYS, EVER)).containsExactly(bucket(HERON, 1, hot(215, 20)));
  }

  @Test
  void commit_account_replacesTheOneBefore() {
    store.commit(
        new Commit(
            List.of(),
            List.of(),
            List.of(account(IBIS, hot(215, 1)), account(HERON, hot(215, 2)))));
    store.commit(new Commit(List.of(), List.of(), List.of(account(IBIS, hot(240, 3)))));

    assertThat(store.accounts())
        .containsExactly(account(HERON, hot(215, 2)), account(IBIS, hot(240, 3)));
  }

  @Test
  void commit_longerThanABucketMayBe_isRefused() {
    Bucket tooLong = new Bucket(HERON, 0, Bucket.LENGTH_NANOS + 1, hot(215, 1));

    assertThatThrownBy(() -> credits(tooLong))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("at most 300000000000 ns");
  }

  @Test
  void commit_thatOverflows_changesNothing() {
    Tally most = new Tally(Exposure.NONE, 0, 0, 0, 0, Long.MAX_VALUE, 0);
    store.commit(credits(bucket(HERON, 1, most)));
    Commit broken =
        new Commit(
            List.of(bucket(HERON, 0, hot(215, 5)), bucket(HERON, 1, most)),
            List.of(),
            List.of(account(HERON, hot(215, 5))));

    assertThatThrownBy(() -> store.commit(broken)).isInstanceOf(RuntimeException.class);
    assertThat(store.buckets(HERON, ALWAYS, EVER)).containsExactly(bucket(HERON, 1, most));
    assertThat(store.accounts()).isEmpty();
  }

  @Test
  void buckets_ofAStretch_areThoseThatOverlapIt() {
    for (int i = 0; i < 4; i++) {
      store.commit(credits(bucket(HERON, i, hot(215, i + 1))));
    }
    long second = MORNING + Bucket.LENGTH_NANOS;

    assertThat(store.buckets(HERON, second, second + Bucket.LENGTH_NANOS))
        .containsExactly(bucket(HERON, 1, hot(215, 2)));
    assertThat(store.buckets(HERON, second - 1, second + 1))
        .containsExactly(bucket(HERON, 0, hot(215, 1)), bucket(HERON, 1, hot(215, 2)));
    assertThat(store.buckets(HERON, second, second)).isEmpty();
    assertThat(store.buckets(HERON, second, second - 1)).isEmpty();
  }

  @Test
  void tally_withinABucket_isItsShare() {
    store.commit(credits(bucket(HERON, 0, hot(215, 300))));

    Tally third = store.tally(HERON, MORNING, MORNING + 100 * SECOND);

    // A third of the bucket's time holds a third of its 300 hot seconds.
    assertThat(third.exposure().hotNanos()).isEqualTo(100 * SECOND);
    assertThat(third.plus(store.tally(HERON, MORNING + 100 * SECOND, EVER)))
        .isEqualTo(hot(215, 300));
    assertThat(store.tally(HERON, MORNING + SECOND, MORNING)).isEqualTo(Tally.NONE);
  }

  @ParameterizedTest(name = "seed {0}")
  @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
  void factsInAnyOrder_ofAnyStretch_areTheSumOfTheirShares(long seed) {
    Random random = new Random(seed);
    List<Bucket> truth = new ArrayList<>();
    MemoryStore memory = new MemoryStore();
    for (int i = 0; i < 12; i++) {
      List<Bucket> more = anyBuckets(random, HERON, 8);
      truth.addAll(more);
      Commit commit = new Commit(more, List.of(), List.of());
      store.commit(commit);
      memory.commit(commit);
    }
    Tally all = truth.stream().map(Bucket::tally).reduce(Tally.NONE, Tally::plus);

    assertThat(store.tally(HERON, ALWAYS, EVER)).isEqualTo(all);
    assertThat(store.buckets(HERON, ALWAYS, EVER)).isEqualTo(memory.buckets(HERON, ALWAYS, EVER));
    for (int i = 0; i < 60; i++) {
      long one = edge(random);
      long other = edge(random);
      long from = Math.min(one, other);
      long until = Math.max(one, other);
      List<Bucket> overlapping = store.buckets(HERON, from, until);
      assertThat(overlapping).isEqualTo(memory.buckets(HERON, from, until));
      assertThat(store.tally(HERON, from, until))
          .isEqualTo(
              overlapping.stream().map(b -> b.within(from, until)).reduce(Tally.NONE, Tally::plus));
      assertThat(
              store
                  .tally(HERON, ALWAYS, from)
                  .plus(store.tally(HERON, from, until))
                  .plus(store.tally(HERON, until, EVER)))
          .isEqualTo(all);
    }
  }

  private static long edge(Random random) {
    long lattice = MORNING + (random.nextInt(44) - 2) * Bucket.LENGTH_NANOS;
    return random.nextBoolean() ? lattice : lattice + random.nextLong(Bucket.LENGTH_NANOS);
  }

  @Test
  void saveParts_everySortOfHistory_comesBackUnchanged() {
    Exposure paper = Exposure.of(225, 300).plus(Exposure.of(237, 41.5));
    List<Part> parts = new ArrayList<>();
    for (Ending ending : everyEnding()) {
      parts.add(
          new Part(
              "P-%02d".formatted(parts.size()),
              "liner",
              Optional.empty(),
              MORNING,
              Optional.of(new Part.PaperPast(paper, ending)),
              List.of()));
    }
    parts.add(
        new Part(
            "Ü-9",
            "nozzle",
            Optional.of("hardened"),
            MORNING,
            Optional.of(new Part.PaperPast(Exposure.NONE, everyEnding().get(0))),
            List.of(
                new PartEvent.Fitted(MORNING, HERON, Optional.of(new PriorPast(120, 60, 220))),
                new PartEvent.Removed(MORNING + 5, Because.JAM, true),
                new PartEvent.Cleaned(MORNING + 6, 0.7),
                new PartEvent.Fitted(MORNING + 6, IBIS, Optional.empty()),
                new PartEvent.Removed(MORNING + 9, Because.WORN, false),
                new PartEvent.Retired(MORNING + 9))));

    assertThat(store.saveParts(0, parts)).isTrue();
    assertThat(store.parts()).isEqualTo(parts);
  }

  private static List<Ending> everyEnding() {
    List<Ending> endings = new ArrayList<>();
    Arrays.stream(Ending.Why.values()).map(Ending.Censored::new).forEach(endings::add);
    Arrays.stream(Because.values())
        .filter(Because::isFailure)
        .map(Ending.Failed::new)
        .forEach(endings::add);
    return endings;
  }

  @Test
  void saveParts_again_replacesThoseNamedAndKeepsTheOthers() {
    Part liner = Part.added("L-014", "liner", Optional.empty(), MORNING);
    Part nozzle = Part.added("N-003", "nozzle", Optional.empty(), MORNING);
    store.saveParts(0, List.of(nozzle, liner));
    Part fitted =
        new Part(
            "L-014",
            "liner",
            Optional.empty(),
            MORNING,
            Optional.empty(),
            List.of(new PartEvent.Fitted(MORNING, HERON, Optional.empty())));

    assertThat(store.saveParts(store.revision(), List.of(fitted))).isTrue();
    assertThat(store.parts()).containsExactly(fitted, nozzle);
  }

  @Test
  void saveParts_onAnOlderRevision_changesNothing() {
    Part liner = Part.added("L-014", "liner", Optional.empty(), MORNING);
    long before = store.revision();
    store.saveParts(before, List.of(liner));
    long after = store.revision();

    assertThat(after).isGreaterThan(before);
    assertThat(
            store.saveParts(
                before, List.of(Part.added("L-015", "liner", Optional.empty(), MORNING))))
        .isFalse();
    assertThat(store.revision()).isEqualTo(after);
    assertThat(store.parts()).containsExactly(liner);
  }

  @Test
  void commit_leavesTheRevisionOfParts() {
    store.saveParts(0, List.of(Part.added("L-014", "liner", Optional.empty(), MORNING)));
    long revision = store.revision();
    store.commit(credits(bucket(HERON, 0, hot(215, 10))));

    assertThat(store.revision()).isEqualTo(revision);
  }

  @Test
  void keepRecording_secondTime_isRefusedAndCommitsNothing() {
    Commit last = credits(bucket(HERON, 0, hot(215, 10)));
    store.keepRecording("d1", "monday.jsonl.gz", MORNING, last);

    assertThat(store.hasRecording("d1")).isTrue();
    assertThat(store.hasRecording("d2")).isFalse();
    assertThatThrownBy(() -> store.keepRecording("d1", "copy.jsonl.gz", MORNING, last))
        .isInstanceOf(StoreException.class)
        .hasMessageContaining("copy.jsonl.gz was credited before");
    assertThat(store.tally(HERON, ALWAYS, EVER)).isEqualTo(hot(215, 10));
  }

  @Test
  void claim_byTheHolderItself_mayBeRepeated() {
    store.claim();
    store.claim();
    store.commit(credits(bucket(HERON, 0, hot(215, 10))));

    assertThat(store.tally(HERON, ALWAYS, EVER)).isEqualTo(hot(215, 10));
  }

  @Test
  void close_twice_isHarmless() {
    store.close();
    store.close();
  }
}
