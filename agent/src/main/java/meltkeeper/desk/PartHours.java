package meltkeeper.desk;

import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import meltkeeper.ledger.Account;
import meltkeeper.ledger.Tally;
import meltkeeper.part.Exposure;
import meltkeeper.part.Fitting;
import meltkeeper.part.Part;
import meltkeeper.part.PriorPast;
import meltkeeper.protocol.HotEnd;
import meltkeeper.store.Store;

/**
 * The hours of parts, derived from the facts of hot ends and from where each part was when.
 *
 * <p>Reading a stay's facts back to its beginning is slow, so the sums are kept and only the growth
 * of a hot end's running total is added to them. They are read anew when the store's revision
 * moves. Soon after that the agent may still cut stored stretches at the new edges, so sums are
 * kept for no longer than the revision had stood when they were read, within {@link #LEAST_NANOS}
 * and {@link #MOST_NANOS}. Safe for any thread.
 */
final class PartHours {

  private static final long LEAST_NANOS = 2_000_000_000L;
  private static final long MOST_NANOS = 600_000_000_000L;
  private static final int TRIES = 5;

  /** A part's sum when it was read, and the running total beside it while the part is fitted. */
  private record Base(Part part, Tally sum, Tally totalThen) {

    Optional<HotEnd> hotEnd() {
      return part.fittedOn();
    }
  }

  private record Kept(
      long revision, long revisionSeenNanos, long readNanos, Map<String, Base> bases) {

    boolean isGood(long revisionNow, long nowNanos) {
      long stood = readNanos - revisionSeenNanos;
      long age = nowNanos - readNanos;
      return revision == revisionNow
          && age >= 0
          && age < Math.min(MOST_NANOS, Math.max(LEAST_NANOS, stood));
    }
  }

  private final Store store;
  private Kept kept = new Kept(Long.MIN_VALUE, 0, 0, Map.of());

  PartHours(Store store) {
    this.store = store;
  }

  /** Parts that are on a hot end now, by id. */
  List<FittedHours> fitted(long nowNanos) {
    return bases(nowNanos).values().stream()
        .filter(base -> base.hotEnd().isPresent())
        .map(
            base ->
                new FittedHours(
                    base.part().id(),
                    base.part().kind(),
                    base.hotEnd().get(),
                    base.sum(),
                    base.totalThen()))
        .toList();
  }

  /** Every part with its facts up to the last commit, by id. */
  Map<Part, Tally> all(long nowNanos) {
    Map<String, Base> bases = bases(nowNanos);
    Map<HotEnd, Tally> totals = totals();
    Map<Part, Tally> all = new LinkedHashMap<>();
    for (Base base : bases.values()) {
      Tally since =
          base.hotEnd()
              .map(h -> totals.getOrDefault(h, Tally.NONE).minus(base.totalThen()))
              .orElse(Tally.NONE);
      all.put(base.part(), base.sum().plus(since));
    }
    return all;
  }

  /** One part's facts, read from the store now. */
  Tally of(Part part) {
    Tally sum = asTally(told(part));
    for (Fitting stay : part.fittings()) {
      sum = sum.plus(of(stay));
    }
    return sum;
  }

  /** What the hot end did during a stay. */
  Tally of(Fitting stay) {
    return store.tally(stay.hotEnd(), stay.fromNanos(), stay.until());
  }

  /** Hours that were told, not observed: on paper, or from before a fitting. */
  static Exposure told(Part part) {
    Exposure told = part.paper().map(Part.PaperPast::exposure).orElse(Exposure.NONE);
    for (Fitting stay : part.fittings()) {
      told = told.plus(stay.past().map(PriorPast::exposure).orElse(Exposure.NONE));
    }
    return told;
  }

  /** Filament that went through: as measured, or as commanded where nothing measures it. */
  static long filamentMicrometres(Tally tally) {
    return tally.measuredMicrometres() > 0
        ? tally.measuredMicrometres()
        : tally.commandedMicrometres();
  }

  static Tally asTally(Exposure exposure) {
    return new Tally(exposure, 0, 0, 0, 0, 0, 0);
  }

  private synchronized Map<String, Base> bases(long nowNanos) {
    long revision = store.revision();
    if (!kept.isGood(revision, nowNanos)) {
      long seen = kept.revision() == revision ? kept.revisionSeenNanos() : nowNanos;
      kept = new Kept(revision, seen, nowNanos, read());
    }
    return kept.bases();
  }

  /** Sums and totals that belong together: sums are read again while a commit comes between. */
  private Map<String, Base> read() {
    Map<String, Base> bases = new TreeMap<>();
    List<Part> open = store.parts();
    Map<HotEnd, Tally> before = totals();
    for (int tries = 0; tries < TRIES && !open.isEmpty(); tries++) {
      for (Part part : open) {
        Tally total = part.fittedOn().map(h -> totalOf(before, h)).orElse(Tally.NONE);
        bases.put(part.id(), new Base(part, of(part), total));
      }
      Map<HotEnd, Tally> after = totals();
      open =
          open.stream()
              .filter(part -> part.fittedOn().isPresent())
              .filter(
                  part ->
                      !totalOf(before, part.fittedOn().get())
                          .equals(totalOf(after, part.fittedOn().get())))
              .toList();
      before.clear();
      before.putAll(after);
    }
    return bases;
  }

  private static Tally totalOf(Map<HotEnd, Tally> totals, HotEnd hotEnd) {
    return totals.getOrDefault(hotEnd, Tally.NONE);
  }

  private Map<HotEnd, Tally> totals() {
    Map<HotEnd, Tally> totals = new HashMap<>();
    for (Account account : store.accounts()) {
      totals.put(account.hotEnd(), account.total());
    }
    return totals;
  }
}
