package meltkeeper.ledger;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Random;
import java.util.TreeSet;
import meltkeeper.protocol.JobState;
import meltkeeper.protocol.Reading;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Splitting a run at any reading, or its buckets at any time, changes no sum. */
class SplitTest {

  private static Course randomCourse(long seed, Grid grid) {
    Random random = new Random(seed);
    Course course = Course.on(grid);
    double at = 1000;
    double total = 0;
    for (int i = 0; i < 1500; i++) {
      at += random.nextInt(50) == 0 ? random.nextInt(9000) : random.nextInt(4000) / 1000.0;
      switch (random.nextInt(6)) {
        case 0 -> course.target(at, random.nextInt(3) == 0 ? 0 : 220);
        case 1 -> {
          total += random.nextInt(40) - 5;
          course.commanded(at, total);
        }
        case 2 -> course.measured(at, Math.max(0, total - 1));
        case 3 -> course.job(at, random.nextBoolean() ? JobState.PRINTING : JobState.IDLE);
        default -> course.celsius(at, 100 + random.nextInt(160));
      }
    }
    return course;
  }

  @ParameterizedTest(name = "seed {0}")
  @ValueSource(longs = {21, 22, 23, 24, 25, 26})
  void run_splitAtAnyReading_creditsTheSame(long seed) {
    List<Reading> told = randomCourse(seed, Grid.PLAIN).told();
    Tally whole = randomCourse(seed, Grid.PLAIN).total();
    Ledger ledger = new Ledger(Limits.DEFAULT);
    for (int split = 0; split < told.size(); split += 97) {
      Account account = Account.opened(Course.HERON);
      Tally sum = Tally.NONE;
      int at = 0;
      while (at < told.size()) {
        int until = at < split ? split : told.size();
        Credits credits = new Credits(Course.HERON, Grid.PLAIN);
        for (Reading reading : told.subList(at, until)) {
          account = ledger.step(account, reading, credits).account();
        }
        account = account.credited(credits.sum());
        sum = sum.plus(credits.sum());
        at = until;
      }
      assertThat(sum).isEqualTo(whole);
      assertThat(account.total()).isEqualTo(whole);
    }
  }

  @ParameterizedTest(name = "seed {0}")
  @ValueSource(longs = {31, 32, 33, 34})
  void buckets_cutAnywhere_sumToTheSameTime(long seed) {
    Random random = new Random(seed);
    TreeSet<Long> cuts = new TreeSet<>();
    for (int i = 0; i < 40; i++) {
      cuts.add(Course.nanos(1000 + random.nextInt(20_000_000) / 1000.0));
    }
    Tally plain = randomCourse(seed, Grid.PLAIN).total();
    Tally cut = randomCourse(seed, new Grid(cuts)).total();

    assertThat(cut.exposure().hotNanos()).isEqualTo(plain.exposure().hotNanos());
    assertThat(cut.printingNanos()).isEqualTo(plain.printingNanos());
    assertThat(cut.bridgedNanos()).isEqualTo(plain.bridgedNanos());
    assertThat(cut.idleNanos()).isEqualTo(plain.idleNanos());
    assertThat(cut.commandedMicrometres()).isEqualTo(plain.commandedMicrometres());
  }

  @ParameterizedTest(name = "seed {0}")
  @ValueSource(longs = {41, 42, 43, 44})
  void bucket_sharedAtAnyTimes_losesNothing(long seed) {
    Random random = new Random(seed);
    for (Bucket bucket : randomCourse(seed, Grid.PLAIN).buckets()) {
      long length = bucket.untilNanos() - bucket.fromNanos();
      long first = bucket.fromNanos() + (long) (random.nextDouble() * length);
      long second = first + (long) (random.nextDouble() * (bucket.untilNanos() - first));
      Tally sum =
          bucket
              .within(Long.MIN_VALUE, first)
              .plus(bucket.within(first, second))
              .plus(bucket.within(second, Long.MAX_VALUE));

      assertThat(sum).isEqualTo(bucket.tally());
    }
  }
}
