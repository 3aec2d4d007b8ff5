package meltkeeper.store.sql;

import static meltkeeper.store.StoreFixture.HERON;
import static meltkeeper.store.StoreFixture.MORNING;
import static meltkeeper.store.StoreFixture.account;
import static meltkeeper.store.StoreFixture.bucket;
import static meltkeeper.store.StoreFixture.hot;

import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import meltkeeper.ledger.Tally;
import meltkeeper.store.Alert;
import meltkeeper.store.AlertTopic;
import meltkeeper.store.Commit;
import meltkeeper.store.Episode;
import meltkeeper.store.Posting;
import meltkeeper.store.Store;
import meltkeeper.store.StoreFixture;
import meltkeeper.store.Subject;

/**
 * A process of its own that commits for ever and prints the number of each commit once it is done.
 * Commit n credits one hot second to bucket n and to bucket n + 1, the sum to the account, and
 * posts an alert.
 */
final class CommittingProgram {

  private CommittingProgram() {}

  /** The commit of that number. */
  static Commit commit(int number) {
    return new Commit(
        List.of(bucket(HERON, number, second()), bucket(HERON, number + 1, second())),
        List.of(),
        List.of(account(HERON, total(number + 1))),
        List.of(new Posting(alert(number), List.of("phone"))),
        List.of());
  }

  /** The alert of that commit. */
  static Alert alert(int number) {
    return StoreFixture.alert(
        new Episode(AlertTopic.TOO_HOT, new Subject.OfHotEnd(HERON), MORNING + number),
        Alert.Phase.BEGAN,
        number);
  }

  private static Tally second() {
    return hot(215, 1);
  }

  /** What stands after that many commits. */
  static Tally total(int commits) {
    return commits == 0 ? Tally.NONE : hot(215, 2L * commits);
  }

  public static void main(String[] args) {
    try (Store store = Stores.open(args[0])) {
      store.claim();
      long pauseNanos = TimeUnit.MICROSECONDS.toNanos(Long.parseLong(args[1]));
      for (int number = 0; ; number++) {
        store.commit(commit(number));
        System.out.println(number);
        LockSupport.parkNanos(pauseNanos);
      }
    }
  }
}
