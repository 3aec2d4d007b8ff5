package meltkeeper.desk;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
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
 * Tells what each part has been through, derived from the facts of hot ends and from where each
 * part was when.
 *
 * <p>Reading a stay's facts back to its beginning is slow, so the sums are kept and only the growth
 * of a hot end's running total is added to them: a scrape costs no such query. They are read anew
 * when the store's revision moves. Soon after that the agent may still cut stored stretches at the
 * new edges, so sums are kept no longer than the revision had stood when they were read, but for at
 * least {@value #LEAST_NANOS} and at most {@value #MOST_NANOS} nanoseconds. Safe for any thread.
 */
public final class PartHeats {

  private static final long LEAST_NANOS = 2_000_000_000L;
  private static final long MOST_NANOS = 600_000_000_000L;

  /** With a commit every ten seconds one is enough; a store under a replay may need more. */
  private static final int TRIES = 5;

  /** A part's sum when it was read, and its hot end's running total beside it. */
  private record Base(Part part, Tally sum, Tally totalThen) {}

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

  public PartHeats(Store store) {
    this.store = store;
  }

  /**
   * Every part, by id.
   *
   * @param totals the hot ends' committed totals now
   * @param nowNanos the wall clock, nanoseconds since 1970
   */
  public List<PartHeat> heats(Map<HotEnd, Tally> totals, long nowNanos) {
    List<PartHeat> heats = new ArrayList<>();
    for (Base base : bases(nowNanos).values()) {
      Tally since =
          base.part()
              .fittedOn()
              .map(hotEnd -> totals.getOrDefault(hotEnd, base.totalThen()).minus(base.totalThen()))
              .orElse(Tally.NONE);
      heats.add(new PartHeat(base.part(), base.sum().plus(since)));
    }
    return heats;
  }

  /** Every part, by id, up to the last commit to the store. */
  public List<PartHeat> heats(long nowNanos) {
    bases(nowNanos);
    return heats(totals(), nowNanos);
  }

  /** What one part has been through, read from the store now. */
  Tally of(Part part) {
    Tally sum = ofExposure(told(part));
    for (Fitting stay : part.fittings()) {
      sum = sum.plus(of(stay));
    }
    return sum;
  }

  /** What its hot end did during a stay. */
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

  static Tally ofExposure(Exposure exposure) {
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
      Map<HotEnd, Tally> then = before;
      open.forEach(part -> bases.put(part.id(), new Base(part, of(part), totalOf(part, then))));
      Map<HotEnd, Tally> after = totals();
      open =
          open.stream().filter(part -> !totalOf(part, then).equals(totalOf(part, after))).toList();
      before = after;
    }
    return bases;
  }

  private static Tally totalOf(Part part, Map<HotEnd, Tally> totals) {
    return part.fittedOn().map(h -> totals.getOrDefault(h, Tally.NONE)).orElse(Tally.NONE);
  }

  private Map<HotEnd, Tally> totals() {
    Map<HotEnd, Tally> totals = new HashMap<>();
    for (Account account : store.accounts()) {
      totals.put(account.hotEnd(), account.total());
    }
    return totals;
  }
}
