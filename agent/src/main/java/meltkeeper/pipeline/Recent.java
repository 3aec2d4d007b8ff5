package meltkeeper.pipeline;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
import meltkeeper.ledger.Account;
import meltkeeper.ledger.Credits;
import meltkeeper.ledger.Grid;
import meltkeeper.ledger.Ledger;
import meltkeeper.protocol.HotEnd;
import meltkeeper.protocol.Reading;

/**
 * The last readings of one hot end and the account before them, so that a swap entered a little
 * late can be cut out of the buckets exactly: the readings are credited once more, on the new grid.
 *
 * <p>Holds at most {@value #MOST} readings, some ten minutes at two a second. Mutable, for the
 * writer's thread.
 */
final class Recent {

  private static final int MOST = 1200;
  private static final int STRETCH = 200;

  private static final class Stretch {
    private final Account before;
    private final List<Reading> readings = new ArrayList<>();

    private Stretch(Account before) {
      this.before = before;
    }
  }

  private final Deque<Stretch> stretches = new ArrayDeque<>();

  /** Notes a reading and the account that it was stepped from. */
  void note(Account before, Reading reading) {
    if (stretches.isEmpty() || stretches.getLast().readings.size() >= STRETCH) {
      stretches.addLast(new Stretch(before));
      if (stretches.size() > MOST / STRETCH) {
        stretches.removeFirst();
      }
    }
    stretches.getLast().readings.add(reading);
  }

  /** Everything known here, credited on a grid. */
  Credits creditedOn(Grid grid, Ledger ledger, HotEnd hotEnd) {
    Credits credits = new Credits(hotEnd, grid);
    Optional<Account> account = Optional.empty();
    for (Stretch stretch : stretches) {
      Account at = account.orElse(stretch.before);
      for (Reading reading : stretch.readings) {
        at = ledger.step(at, reading, credits).account();
      }
      account = Optional.of(at);
    }
    return credits;
  }

  /** True when every reading since that time is still known. */
  boolean covers(long nanos) {
    return !stretches.isEmpty() && stretches.getFirst().before.creditedUntilNanos() <= nanos;
  }
}
