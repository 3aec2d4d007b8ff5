package meltkeeper.endure;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import meltkeeper.ledger.Account;
import meltkeeper.ledger.Tally;
import meltkeeper.protocol.HotEnd;
import meltkeeper.store.Store;
import meltkeeper.store.sql.Stores;

/**
 * What stands in a store about the ramp's printer, against the truth.
 *
 * @param untilNanos up to when everything is credited; {@link Ramp#BEGAN_NANOS} before the first
 * @param lostNanos hot time short of the truth, the worst of total and bands
 * @param doubledNanos hot time beyond the truth, likewise
 * @param bridgedNanos credited across gaps
 */
public record Books(long untilNanos, long lostNanos, long doubledNanos, long bridgedNanos) {

  static final HotEnd HERON = HotEnd.first("heron");

  /** Payloads carry eight digits of a kelvin, and the ramp may rise as slowly as 10⁻⁵ K/s. */
  private static final double BAND_TOLERANCE_NANOS = 10e6;

  /** Reads the store of that file, whether or not an agent runs on it. */
  public static Books of(Path file, Ramp ramp) {
    try (Store store = Stores.open("jdbc:sqlite:" + file)) {
      return of(store, ramp);
    }
  }

  /** Reads an open store. */
  public static Books of(Store store, Ramp ramp) {
    List<Account> accounts = store.accounts();
    if (accounts.isEmpty()) {
      return new Books(Ramp.BEGAN_NANOS, 0, 0, 0);
    }
    Account account = accounts.get(0);
    Tally total = account.total();
    Tally facts = store.tally(HERON, Long.MIN_VALUE, Long.MAX_VALUE);
    if (!facts.equals(total)) {
      throw new AssertionError("account and facts disagree: " + total + " and " + facts);
    }
    long until = account.creditedUntilNanos();
    long excess = total.exposure().hotNanos() - (until - Ramp.BEGAN_NANOS);
    double band = worst(ramp.nanosByBand(until), total);
    long fedReadings = total.commandedMicrometres() / Ramp.MICROMETRES_PER_READING;
    long fed = Ramp.nanos(fedReadings) - until;
    long off = furthest(excess, Math.abs(band) > BAND_TOLERANCE_NANOS ? (long) band : 0, fed);
    return new Books(until, Math.max(0, -off), Math.max(0, off), total.bridgedNanos());
  }

  private static double worst(Map<Integer, Double> truth, Tally total) {
    double worst = 0;
    for (Map.Entry<Integer, Double> band : truth.entrySet()) {
      double off = total.exposure().in(band.getKey()).nanos() - band.getValue();
      worst = Math.abs(off) > Math.abs(worst) ? off : worst;
    }
    return worst;
  }

  private static long furthest(long... offs) {
    long furthest = 0;
    for (long off : offs) {
      furthest = Math.abs(off) > Math.abs(furthest) ? off : furthest;
    }
    return furthest;
  }

  /** True when total, bands and filament are the truth. */
  public boolean balance() {
    return lostNanos == 0 && doubledNanos == 0;
  }
}
