package meltkeeper.desk;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.NavigableSet;
import java.util.TreeSet;
import meltkeeper.ledger.Account;
import meltkeeper.ledger.Tally;
import meltkeeper.part.Because;
import meltkeeper.part.Costs;
import meltkeeper.part.Fitting;
import meltkeeper.part.Kind;
import meltkeeper.part.Moments;
import meltkeeper.part.Part;
import meltkeeper.part.PartEvent;
import meltkeeper.protocol.Fault;
import meltkeeper.protocol.HotEnd;
import meltkeeper.store.Store;

/** Tells what a stretch of time brought and cost. Safe for any thread. */
public final class ReportDesk {

  private final Store store;
  private final Shop shop;
  private final PartHeats heats;

  ReportDesk(Store store, Shop shop) {
    this.store = store;
    this.shop = shop;
    this.heats = new PartHeats(store);
  }

  /** The end of a stay within the stretch of time that is asked for. */
  private record End(Part part, Fitting stay, PartEvent event) {}

  /**
   * The report from {@code sinceNanos} to {@code untilNanos}, exclusive, nanoseconds since 1970.
   * Stored stretches at either end give their share in proportion to time.
   *
   * @throws RefusedException when it would end before it begins
   */
  public Report report(long sinceNanos, long untilNanos) {
    if (!(sinceNanos < untilNanos)) {
      throw new RefusedException(
          List.of(
              Fault.of(
                  "since",
                  words(sinceNanos),
                  "a time before the end of the report, " + words(untilNanos))));
    }
    List<Part> parts = store.parts();
    List<Report.OfHotEnd> hotEnds = new ArrayList<>();
    Report.Costs costs = Report.Costs.NONE;
    for (HotEnd hotEnd : hotEnds()) {
      Report.OfHotEnd one = of(hotEnd, sinceNanos, untilNanos, parts);
      hotEnds.add(one);
      costs = costs.plus(one.costs());
    }
    return new Report(
        Moments.instant(sinceNanos),
        Moments.instant(untilNanos),
        shop.zone().getId(),
        shop.costs().map(Costs::currency).orElse(""),
        hotEnds,
        costs,
        notes(hotEnds));
  }

  /** Those of the configuration, and those that have facts from before it changed. */
  private NavigableSet<HotEnd> hotEnds() {
    NavigableSet<HotEnd> all = new TreeSet<>(shop.printers().stream().map(HotEnd::first).toList());
    store.accounts().stream().map(Account::hotEnd).forEach(all::add);
    return all;
  }

  private Report.OfHotEnd of(HotEnd hotEnd, long since, long until, List<Part> parts) {
    Tally tally = store.tally(hotEnd, since, until);
    List<Report.Swap> swaps =
        parts.stream()
            .flatMap(part -> ends(part).stream())
            .filter(end -> end.stay().hotEnd().equals(hotEnd))
            .filter(end -> end.stay().until() >= since && end.stay().until() < until)
            .sorted(Comparator.comparingLong(end -> end.stay().until()))
            .map(this::swap)
            .toList();
    Report.Costs costs = Report.Costs.NONE;
    for (Report.Swap swap : swaps) {
      costs = costs.plus(swap.costs());
    }
    return new Report.OfHotEnd(
        hotEnd.printer(),
        hotEnd.index(),
        PartLine.hours(tally.exposure().hotNanos()),
        PartLine.hours(tally.printingNanos()),
        PartLine.metres(tally),
        TallyAnswer.of(tally),
        swaps,
        (int) swaps.stream().filter(s -> s.because().equals(Because.JAM.word())).count(),
        costs);
  }

  private static List<End> ends(Part part) {
    List<End> ends = new ArrayList<>();
    for (Fitting stay : part.fittings()) {
      part.events().stream()
          .filter(event -> !stay.isOpen() && event.atNanos() == stay.until())
          .forEach(event -> ends.add(new End(part, stay, event)));
    }
    return ends;
  }

  private Report.Swap swap(End end) {
    Part part = end.part();
    boolean excused = end.event() instanceof PartEvent.Removed removed && removed.excused();
    return new Report.Swap(
        Moments.instant(end.stay().until()),
        part.id(),
        part.kind(),
        because(end.event()),
        excused,
        PartLine.hours(heats.of(before(part, end.stay())).exposure().hotNanos()),
        costs(end));
  }

  private static String because(PartEvent event) {
    return event instanceof PartEvent.Removed removed ? removed.because().word() : "retired";
  }

  /** The part as it was when a stay ended. */
  private static Part before(Part part, Fitting stay) {
    return new Part(
        part.id(),
        part.kind(),
        part.variant(),
        part.addedNanos(),
        part.paper(),
        part.events().stream().filter(event -> event.atNanos() <= stay.until()).toList());
  }

  /** A part's price counts where it was used up: not when it goes on another day. */
  private Report.Costs costs(End end) {
    Part part = end.part();
    boolean isLast = part.fittings().get(part.fittings().size() - 1).equals(end.stay());
    boolean onlyLooked = because(end.event()).equals(Because.INSPECTION.word());
    boolean usedUp = isLast && (!onlyLooked || part.isRetired());
    boolean jammed = because(end.event()).equals(Because.JAM.word());
    return Report.Costs.of(
        usedUp ? shop.kind(part.kind()).map(Kind::price).orElse(0.0) : 0,
        shop.kind(part.kind()).map(Kind::swapMinutes).orElse(0.0)
            / 60
            * shop.costs().map(Costs::labourPerHour).orElse(0.0),
        jammed ? shop.costs().map(Costs::jam).orElse(0.0) : 0);
  }

  private List<String> notes(List<Report.OfHotEnd> hotEnds) {
    List<String> notes = new ArrayList<>();
    if (shop.costs().isEmpty()) {
      notes.add("the configuration names no costs: labour and jams count as 0");
    }
    hotEnds.stream()
        .flatMap(hotEnd -> hotEnd.swaps().stream())
        .map(Report.Swap::kind)
        .filter(kind -> shop.kind(kind).isEmpty())
        .distinct()
        .forEach(
            kind ->
                notes.add("kind " + kind + " is not in the configuration: its price counts as 0"));
    return notes;
  }

  private String words(long nanos) {
    return Moments.words(nanos, shop.zone());
  }
}
