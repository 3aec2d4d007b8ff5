package meltkeeper.desk;

import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.TreeMap;
import meltkeeper.ledger.Account;
import meltkeeper.ledger.Bucket;
import meltkeeper.ledger.Tally;
import meltkeeper.part.Because;
import meltkeeper.part.Costs;
import meltkeeper.part.Exposure;
import meltkeeper.part.Kind;
import meltkeeper.part.Moments;
import meltkeeper.protocol.HotEnd;
import meltkeeper.store.Commit;
import meltkeeper.store.MemoryStore;
import meltkeeper.store.Store;

/** A shop's desk over a store in memory, with words for tests. The shop's zone is Europe/Vienna. */
public final class Bench {

  public static final HotEnd HERON = HotEnd.first("heron");
  public static final HotEnd IBIS = HotEnd.first("ibis");
  public static final long NOW = at("2026-03-10T12:00:00Z");
  public static final long MINUTE = 60_000_000_000L;
  public static final long HOUR = 60 * MINUTE;

  public static final Shop SHOP =
      new Shop(
          List.of("heron", "ibis"),
          List.of(
              new Kind("liner", 4.50, 15, Optional.empty(), Optional.empty(), Optional.empty()),
              new Kind("nozzle", 12, 10, Optional.empty(), Optional.empty(), Optional.empty())),
          Optional.of(new Costs("EUR", 25, 18)),
          ZoneId.of("Europe/Vienna"));

  public final Store store;
  public final Desk desk;

  public Bench() {
    this(new MemoryStore());
  }

  public Bench(Store store) {
    this(store, SHOP);
  }

  public Bench(Store store, Shop shop) {
    this.store = store;
    this.desk = Desk.of(store, shop);
  }

  public static long at(String instant) {
    return Moments.nanos(Instant.parse(instant));
  }

  public static OptionalLong when(String instant) {
    return OptionalLong.of(at(instant));
  }

  /** Five-minute buckets, at one temperature, feeding 1.2 m an hour. */
  public void hot(HotEnd hotEnd, String from, int hours, double celsius) {
    hot(hotEnd, at(from), at(from) + hours * HOUR, celsius);
  }

  public void hot(HotEnd hotEnd, long from, long until, double celsius) {
    List<Bucket> credits = new ArrayList<>();
    Tally total = total(hotEnd);
    for (long begin = from; begin < until; begin += Bucket.LENGTH_NANOS) {
      long end = Math.min(until, begin + Bucket.LENGTH_NANOS);
      Bucket bucket = new Bucket(hotEnd, begin, end, tally(end - begin, celsius));
      credits.add(bucket);
      total = total.plus(bucket.tally());
    }
    store.commit(new Commit(credits, List.of(), List.of(Account.opened(hotEnd).credited(total))));
  }

  private static Tally tally(long nanos, double celsius) {
    Exposure exposure =
        new Exposure(
            new TreeMap<>(
                Map.of(
                    Exposure.bandOf(celsius),
                    new Exposure.Heat(nanos, Math.round(celsius * nanos / 1000)))));
    return new Tally(exposure, 0, 0, 0, nanos, nanos / 3_000_000, 0);
  }

  public Tally total(HotEnd hotEnd) {
    return store.accounts().stream()
        .filter(account -> account.hotEnd().equals(hotEnd))
        .map(Account::total)
        .findFirst()
        .orElse(Tally.NONE);
  }

  public String add(String kind) {
    return desk.acts()
        .add(new AddPart(kind, Optional.empty(), Optional.empty()), NOW)
        .part()
        .line()
        .id();
  }

  public PartChange fit(String id, HotEnd hotEnd, String at) {
    return desk.acts()
        .fit(
            new FitPart(
                id, hotEnd.printer(), hotEnd.index(), when(at), Optional.empty(), Optional.empty()),
            NOW);
  }

  public PartChange stay(String id, HotEnd hotEnd, long from, long until) {
    return desk.acts()
        .fit(
            new FitPart(
                id,
                hotEnd.printer(),
                hotEnd.index(),
                OptionalLong.of(from),
                Optional.empty(),
                Optional.of(new FitPart.Off(until, Because.PRECAUTION, false))),
            NOW);
  }

  public PartChange remove(String id, Because because, String at) {
    return desk.acts()
        .remove(new RemovePart(new RemovePart.Which.Id(id), because, false, when(at)), NOW);
  }

  public double hours(String id) {
    return desk.parts().part(id).line().hotHours().doubleValue();
  }
}
