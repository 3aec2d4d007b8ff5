package meltkeeper.pipeline;

import java.util.ArrayList;
import java.util.Collection;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.NavigableSet;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.concurrent.ConcurrentSkipListMap;
import java.util.function.Consumer;
import java.util.function.Function;
import meltkeeper.jam.Finding;
import meltkeeper.jam.Watch;
import meltkeeper.jam.WatchSettings;
import meltkeeper.jam.WatchState;
import meltkeeper.ledger.Account;
import meltkeeper.ledger.Grid;
import meltkeeper.ledger.Ledger;
import meltkeeper.ledger.Limits;
import meltkeeper.part.Fitting;
import meltkeeper.part.Part;
import meltkeeper.protocol.Decoder;
import meltkeeper.protocol.HotEnd;
import meltkeeper.protocol.Outlet;
import meltkeeper.protocol.Reading;
import meltkeeper.protocol.Received;
import meltkeeper.protocol.Rejected;
import meltkeeper.store.Commit;
import meltkeeper.store.Store;

/**
 * The path itself, without threads or clocks: decode, step, commit when told to. The running agent
 * and a replay both go through here. For one thread, but for what is said to be for any.
 */
public final class Intake implements Outlet {

  private static final int MOST_UNKNOWN_PRINTERS = 100;

  private final Decoder decoder;
  private final Function<HotEnd, Limits> limits;
  private final Function<HotEnd, WatchSettings> watching;
  private final Map<HotEnd, WatchState> remembered = new HashMap<>();
  private final Store store;
  private final RejectionLog log = new RejectionLog();
  private final Alarms alarms;
  private final Map<HotEnd, HotEndWriter> writers = new ConcurrentSkipListMap<>();
  private final Map<HotEnd, NavigableSet<Long>> cuts = new TreeMap<>();
  private final Map<Rejected.Reason, Long> rejected = new EnumMap<>(Rejected.Reason.class);
  private final Set<Rejected.Reason> unit = EnumSet.noneOf(Rejected.Reason.class);
  private final Set<String> unknownPrinters = new TreeSet<>();
  private Consumer<Finding> findings = finding -> {};
  private long received;
  private long readings;
  private long commits;
  private long revision;
  private Optional<String> trouble = Optional.empty();

  /** An intake that calls nobody, as a replay wants it. */
  public Intake(Decoder decoder, Function<HotEnd, Limits> limits, Store store) {
    this(decoder, limits, hotEnd -> WatchSettings.DEFAULT, store, Calling.NOBODY);
  }

  /**
   * Opens the accounts that the store holds.
   *
   * @param limits what each hot end's account goes by
   * @param watching what each hot end's jam watch goes by
   * @param calling what calls whom
   */
  public Intake(
      Decoder decoder,
      Function<HotEnd, Limits> limits,
      Function<HotEnd, WatchSettings> watching,
      Store store,
      Calling calling) {
    this.decoder = decoder;
    this.limits = limits;
    this.watching = watching;
    this.store = store;
    this.revision = store.revision();
    this.alarms = new Alarms(calling, store.outbox().open());
    noteParts(store.parts());
    store.watches().forEach(state -> remembered.put(state.hotEnd(), state));
    for (Account account : store.accounts()) {
      writers.put(account.hotEnd(), writer(account));
    }
  }

  private HotEndWriter writer(Account account) {
    HotEnd hotEnd = account.hotEnd();
    return new HotEndWriter(
        account, new Ledger(limits.apply(hotEnd)), Grid.with(cutsOf(hotEnd)), watch(hotEnd));
  }

  private Watch watch(HotEnd hotEnd) {
    WatchSettings settings = watching.apply(hotEnd);
    WatchState state = remembered.get(hotEnd);
    return state == null ? Watch.opened(hotEnd, settings) : Watch.restored(state, settings);
  }

  private NavigableSet<Long> cutsOf(HotEnd hotEnd) {
    return cuts.getOrDefault(hotEnd, new TreeSet<>());
  }

  /** Takes one message or line in. */
  public void accept(Received message) {
    received++;
    unit.clear();
    decoder.decode(message, this);
    for (Rejected.Reason reason : unit) {
      rejected.merge(reason, 1L, Long::sum);
    }
  }

  @Override
  public void reading(Reading reading) {
    readings++;
    HotEndWriter writer =
        writers.computeIfAbsent(
            reading.sample().hotEnd(), hotEnd -> writer(Account.opened(hotEnd)));
    HotEndWriter.Taken taken = writer.take(reading);
    switch (taken.verdict()) {
      case TAKEN -> alarms.take(reading);
      case LATE -> unit.add(Rejected.Reason.LATE);
      case DUPLICATE -> unit.add(Rejected.Reason.DUPLICATE);
      case RETAINED -> {
        unit.add(Rejected.Reason.RETAINED);
        alarms.take(reading);
      }
    }
    taken.finding().ifPresent(finding -> found(finding, reading));
  }

  private void found(Finding finding, Reading reading) {
    alarms.take(finding, reading.sample());
    findings.accept(finding);
  }

  /** Tells every finding of a jam watch from now on to somebody, as a replay wants. */
  public void onFinding(Consumer<Finding> hearer) {
    findings = hearer;
  }

  /**
   * Looks whether a printer has fallen silent.
   *
   * @param nowNanos on the steady clock
   */
  public void look(long nowNanos) {
    alarms.look(nowNanos);
  }

  @Override
  public void rejected(Rejected news) {
    rejected.merge(news.reason(), 1L, Long::sum);
    if (news.reason() == Rejected.Reason.UNKNOWN_PRINTER
        && unknownPrinters.size() < MOST_UNKNOWN_PRINTERS) {
      unknownPrinters.add(news.detail());
    }
    log.tell(news);
  }

  /** True when something was taken in since the last commit. */
  public boolean hasNews() {
    return isCalling() || writers.values().stream().anyMatch(HotEndWriter::hasMoved);
  }

  /** True when somebody is to be called, which should not wait. */
  boolean isCalling() {
    return !alarms.pending().isEmpty();
  }

  /** What a commit now would hold. */
  public Commit pending() {
    return pending(false);
  }

  /** The same, with all that the jam watches remember: the last commit before an end. */
  public Commit pendingAtTheEnd() {
    return pending(true);
  }

  private Commit pending(boolean atTheEnd) {
    List<HotEndWriter> moved = moved();
    return new Commit(
        moved.stream().flatMap(w -> w.earned().stream()).toList(),
        List.of(),
        moved.stream().map(HotEndWriter::settled).toList(),
        alarms.pending(),
        (atTheEnd ? writers.values().stream() : moved.stream())
            .flatMap(w -> w.watchToKeep(atTheEnd).stream())
            .toList());
  }

  private List<HotEndWriter> moved() {
    return writers.values().stream().filter(HotEndWriter::hasMoved).toList();
  }

  /**
   * Commits what was taken in. When the store fails nothing is lost: the next call tries again.
   *
   * @throws meltkeeper.store.StoreException when it fails
   */
  public void commit() {
    if (hasNews()) {
      store.commit(pending());
      settled();
    }
  }

  /** The same, and what the jam watches remember with it: the last commit before an end. */
  public void commitAtTheEnd() {
    Commit last = pendingAtTheEnd();
    if (!last.isEmpty()) {
      store.commit(last);
      settled();
    }
  }

  /** Notes that {@link #pending()} is safely stored. */
  public void settled() {
    moved().forEach(HotEndWriter::committed);
    alarms.posted();
    commits++;
    trouble = Optional.empty();
  }

  /** Notes that the store failed, for showing. */
  void failed(String why) {
    trouble = Optional.of(why);
  }

  /** Notes that the store answered: all is well again once nothing waits for it. */
  void answered() {
    if (!hasNews()) {
      trouble = Optional.empty();
    }
  }

  boolean isInTrouble() {
    return trouble.isPresent();
  }

  /**
   * Looks whether parts were fitted or taken off by whatever process, and cuts the buckets there.
   *
   * @throws meltkeeper.store.StoreException when the store cannot be reached
   */
  public void noticeFittings() {
    long now = store.revision();
    if (now == revision) {
      return;
    }
    noteParts(store.parts());
    if (writers.entrySet().stream().anyMatch(e -> e.getValue().lacks(cutsOf(e.getKey())))) {
      commit();
      for (Map.Entry<HotEnd, HotEndWriter> entry : writers.entrySet()) {
        if (entry.getValue().lacks(cutsOf(entry.getKey()))) {
          Commit cut = entry.getValue().cut(cutsOf(entry.getKey()));
          if (!cut.isEmpty()) {
            store.commit(cut);
          }
        }
      }
    }
    revision = now;
  }

  private void noteParts(Collection<Part> parts) {
    alarms.noteFitted(parts);
    for (Part part : parts) {
      for (Fitting fitting : part.fittings()) {
        NavigableSet<Long> of = cuts.computeIfAbsent(fitting.hotEnd(), h -> new TreeSet<>());
        of.add(fitting.fromNanos());
        fitting.untilNanos().ifPresent(of::add);
      }
    }
  }

  /** The last day of a hot end, minute by minute; for any thread. */
  List<Minute> trail(HotEnd hotEnd) {
    HotEndWriter writer = writers.get(hotEnd);
    return writer == null ? List.of() : writer.trail().minutes();
  }

  /** What stands now. */
  public Live live() {
    List<HotEndLive> hotEnds = new ArrayList<>();
    writers.values().forEach(writer -> hotEnds.add(writer.live()));
    return new Live(
        hotEnds, received, readings, rejected, List.copyOf(unknownPrinters), commits, trouble);
  }
}
