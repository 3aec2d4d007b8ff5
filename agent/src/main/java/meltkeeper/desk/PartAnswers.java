package meltkeeper.desk;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import meltkeeper.ledger.Bucket;
import meltkeeper.ledger.Tally;
import meltkeeper.part.Fitting;
import meltkeeper.part.Moments;
import meltkeeper.part.Part;
import meltkeeper.part.PartEvent;
import meltkeeper.part.Shelf;
import meltkeeper.protocol.Fault;
import meltkeeper.protocol.HotEnd;
import meltkeeper.store.Store;

/** What a shop asks of its parts. Safe for any thread; up to the last commit of the agent. */
public final class PartAnswers {

  private final Store store;
  private final Shop shop;
  private final PartHeats heats;

  PartAnswers(Store store, Shop shop) {
    this.store = store;
    this.shop = shop;
    this.heats = new PartHeats(store);
  }

  /**
   * The parts that a filter lets through, by id.
   *
   * @throws RefusedException for a kind or printer that is not in the configuration
   */
  public List<PartLine> parts(PartFilter filter, long nowNanos) {
    check(filter);
    return lines(heats.heats(nowNanos), filter);
  }

  /**
   * The same, up to this moment.
   *
   * @param totals the hot ends' committed totals now
   * @throws RefusedException for a kind or printer that is not in the configuration
   */
  public List<PartLine> parts(PartFilter filter, Map<HotEnd, Tally> totals, long nowNanos) {
    check(filter);
    return lines(heats.heats(totals, nowNanos), filter);
  }

  private void check(PartFilter filter) {
    List<Fault> faults = new ArrayList<>();
    filter.kind().ifPresent(k -> faults.addAll(Shelf.checkKind(k, shop.kindNames())));
    filter.printer().ifPresent(p -> faults.addAll(shop.checkPrinter(p)));
    RefusedException.when(faults);
  }

  private static List<PartLine> lines(List<PartHeat> heats, PartFilter filter) {
    return heats.stream()
        .filter(heat -> passes(heat.part(), filter))
        .map(heat -> PartLine.of(heat.part(), heat.tally()))
        .toList();
  }

  private static boolean passes(Part part, PartFilter filter) {
    Optional<String> printer = part.fittedOn().map(HotEnd::printer);
    return filter.kind().map(part.kind()::equals).orElse(true)
        && filter.printer().map(p -> printer.equals(Optional.of(p))).orElse(true)
        && (filter.retiredToo() || !part.isRetired());
  }

  /**
   * One part with its history.
   *
   * @throws RefusedException for an id that no part has
   */
  public PartAnswer part(String id) {
    Shelf shelf = new Shelf(store.parts(), shop.zone());
    return answer(
        shelf.part(id).orElseThrow(() -> new RefusedException(List.of(shelf.unknown(id)))));
  }

  /** What each part has been through, for whoever shows or learns from it. */
  public PartHeats heats() {
    return heats;
  }

  PartChange change(Entering.Step step) {
    Part part = step.part();
    List<SharedEdge> shared = new ArrayList<>();
    for (Fitting stay : part.fittings()) {
      shared.addAll(shared(stay));
    }
    shared.removeIf(edge -> step.entered().stream().noneMatch(e -> isAt(edge, e)));
    List<String> notes = new ArrayList<>();
    part.fittedOn().filter(this::isUnheard).ifPresent(hotEnd -> notes.add(unheard(hotEnd)));
    part.idleRemovals().forEach(removal -> notes.add(idle(part, removal)));
    return new PartChange(step.done(), answer(part), shared, notes, step.undo());
  }

  private boolean isUnheard(HotEnd hotEnd) {
    return store.accounts().stream().noneMatch(account -> account.hotEnd().equals(hotEnd));
  }

  private static String unheard(HotEnd hotEnd) {
    return "nothing was heard of hot end "
        + hotEnd.index()
        + " of "
        + hotEnd.printer()
        + " yet; hours count from when it is";
  }

  private static boolean isAt(SharedEdge edge, PartEvent event) {
    return Moments.nanos(edge.at()) == event.atNanos();
  }

  private String idle(Part part, PartEvent.Removed removal) {
    String at = words(removal.atNanos());
    return "what was entered for "
        + at
        + ", "
        + removal.words()
        + ", now takes nothing off; enter when "
        + part.id()
        + " was fitted again before that (part fit "
        + part.id()
        + " --printer NAME --at TIME), or take it back (part undo "
        + part.id()
        + " --at \""
        + at
        + "\")";
  }

  private PartAnswer answer(Part part) {
    List<PartAnswer.Stay> stays = new ArrayList<>();
    Tally sum = PartHeats.ofExposure(PartHeats.told(part));
    for (Fitting stay : part.fittings()) {
      Tally tally = heats.of(stay);
      sum = sum.plus(tally);
      stays.add(
          new PartAnswer.Stay(
              stay.hotEnd().printer(),
              stay.hotEnd().index(),
              Moments.instant(stay.fromNanos()),
              stay.untilNanos().isPresent()
                  ? Optional.of(Moments.instant(stay.untilNanos().getAsLong()))
                  : Optional.empty(),
              PartLine.hours(tally.exposure().hotNanos()),
              shared(stay)));
    }
    return new PartAnswer(
        PartLine.of(part, sum),
        Moments.instant(part.addedNanos()),
        stays,
        part.events().stream()
            .map(e -> new PartAnswer.Event(Moments.instant(e.atNanos()), e.words(), e.detail()))
            .toList());
  }

  private List<SharedEdge> shared(Fitting stay) {
    List<SharedEdge> shared = new ArrayList<>(shared(stay.hotEnd(), stay.fromNanos()));
    stay.untilNanos().ifPresent(until -> shared.addAll(shared(stay.hotEnd(), until)));
    return shared;
  }

  /** Stored stretches with something in them that a moment cuts in two. */
  private List<SharedEdge> shared(HotEnd hotEnd, long atNanos) {
    return store.buckets(hotEnd, atNanos, atNanos + 1).stream()
        .filter(bucket -> bucket.fromNanos() < atNanos && !bucket.tally().equals(Tally.NONE))
        .map(bucket -> edge(atNanos, bucket))
        .toList();
  }

  private static SharedEdge edge(long atNanos, Bucket bucket) {
    return new SharedEdge(
        Moments.instant(atNanos),
        Moments.instant(bucket.fromNanos()),
        Moments.instant(bucket.untilNanos()));
  }

  private String words(long nanos) {
    return Moments.words(nanos, shop.zone());
  }
}
