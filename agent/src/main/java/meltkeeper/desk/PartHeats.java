package meltkeeper.desk;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import meltkeeper.ledger.Account;
import meltkeeper.ledger.Tally;
import meltkeeper.part.Exposure;
import meltkeeper.part.Fitting;
import meltkeeper.part.Part;
import meltkeeper.protocol.HotEnd;
import meltkeeper.store.Store;

/**
 * Tells what each part has been through. The stored facts are read once for each revision of the
 * parts; what has been credited since is the difference of the hot ends' running totals, so that a
 * scrape costs no query. Safe for any thread.
 */
public final class PartHeats {

  /** What a part had been through, and the totals of its hot end, when the facts were read. */
  private record Base(Part part, Tally tally) {}

  private record Loaded(long revision, List<Base> bases, Map<HotEnd, Tally> totals) {}

  private final Store store;
  private Loaded loaded = new Loaded(Long.MIN_VALUE, List.of(), Map.of());

  public PartHeats(Store store) {
    this.store = store;
  }

  /**
   * Every part, by id.
   *
   * @param totals the hot ends' committed totals now
   */
  public synchronized List<PartHeat> heats(Map<HotEnd, Tally> totals) {
    long revision = store.revision();
    if (revision != loaded.revision()) {
      loaded = load(revision);
    }
    List<PartHeat> heats = new ArrayList<>();
    for (Base base : loaded.bases()) {
      Tally since = base.part().fittedOn().map(hotEnd -> since(hotEnd, totals)).orElse(Tally.NONE);
      heats.add(new PartHeat(base.part(), base.tally().plus(since)));
    }
    return heats;
  }

  private Tally since(HotEnd hotEnd, Map<HotEnd, Tally> totals) {
    Tally then = loaded.totals().getOrDefault(hotEnd, Tally.NONE);
    return totals.getOrDefault(hotEnd, then).minus(then);
  }

  /** Reads until no commit fell between the totals and the facts. */
  private Loaded load(long revision) {
    List<Part> parts = store.parts();
    Map<HotEnd, Tally> before = totals();
    while (true) {
      List<Base> bases = parts.stream().map(part -> new Base(part, tally(part))).toList();
      Map<HotEnd, Tally> after = totals();
      if (after.equals(before)) {
        return new Loaded(revision, bases, after);
      }
      before = after;
    }
  }

  private Map<HotEnd, Tally> totals() {
    Map<HotEnd, Tally> totals = new HashMap<>();
    for (Account account : store.accounts()) {
      totals.put(account.hotEnd(), account.total());
    }
    return totals;
  }

  private Tally tally(Part part) {
    Tally sum = Tally.NONE;
    for (Fitting fitting : part.fittings()) {
      sum =
          sum.plus(
              store.tally(
                  fitting.hotEnd(),
                  fitting.fromNanos(),
                  fitting.untilNanos().orElse(Long.MAX_VALUE)));
    }
    return sum.plus(ofExposure(before(part)));
  }

  private static Exposure before(Part part) {
    Exposure past = part.paper().map(Part.PaperPast::exposure).orElse(Exposure.NONE);
    for (Fitting fitting : part.fittings()) {
      past =
          past.plus(
              fitting
                  .past()
                  .map(prior -> Exposure.of(prior.celsius(), prior.hours()))
                  .orElse(Exposure.NONE));
    }
    return past;
  }

  private static Tally ofExposure(Exposure exposure) {
    return new Tally(exposure, 0, 0, 0, 0, 0, 0);
  }
}
