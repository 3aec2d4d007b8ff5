package meltkeeper.outlook;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;
import java.util.TreeSet;
import meltkeeper.desk.RefusedException;
import meltkeeper.desk.Shop;
import meltkeeper.part.Costs;
import meltkeeper.part.Kind;
import meltkeeper.part.Shelf;
import meltkeeper.protocol.Fault;
import meltkeeper.protocol.HotEnd;
import meltkeeper.store.Store;

/**
 * The desk for what lies ahead. It reckons anew when parts have changed, or when ten minutes have
 * passed and the facts have aged; between, it answers from what it has. Safe for any thread; one
 * that only looks at {@link #latest} never waits for another's reckoning.
 */
public final class OutlookDesk {

  private static final long STALE_NANOS = 600_000_000_000L;

  private final Store store;
  private final Shop shop;
  private final PartLives lives;
  private final DutyBook duties;
  private volatile Outlook kept = Outlook.NONE;

  public OutlookDesk(Store store, Shop shop) {
    this.store = store;
    this.shop = shop;
    this.lives = new PartLives(store);
    this.duties = new DutyBook(store, shop.zone());
  }

  /** Parts on hot ends as they were last reckoned; none before the first time. */
  public List<FittedOutlook> latest() {
    return kept.fitted();
  }

  /** Reckons anew if that is due; a store that cannot be reached leaves things as they were. */
  public void refresh(long nowNanos) {
    now(nowNanos);
  }

  /**
   * What the shop's data say.
   *
   * @throws RefusedException for a kind that is not in the configuration
   */
  public LifeAnswer life(LifeQuestion question, long nowNanos) {
    question.kind().ifPresent(k -> RefusedException.when(Shelf.checkKind(k, shop.kindNames())));
    Map<String, LifeAnswer.OfKind> kinds = new LinkedHashMap<>();
    now(nowNanos)
        .kinds()
        .forEach(
            (name, kind) -> {
              if (question.kind().map(name::equals).orElse(true)) {
                kinds.put(name, KindAnswers.of(kind, question, shop.costs()));
              }
            });
    return new LifeAnswer(shop.zone().getId(), shop.costs().map(Costs::currency).orElse(""), kinds);
  }

  /** What there is to plot of each kind that has parts. */
  public Map<String, KindCurves> curves(long nowNanos) {
    Map<String, KindCurves> curves = new LinkedHashMap<>();
    now(nowNanos)
        .kinds()
        .forEach(
            (name, kind) -> {
              if (!kind.lives().isEmpty()) {
                curves.put(name, KindCurves.of(kind));
              }
            });
    return curves;
  }

  /**
   * Whether the fitted parts get through a batch.
   *
   * @throws RefusedException for a printer that is not in the configuration
   */
  public RiskAnswer risk(RiskQuestion question, long nowNanos) {
    List<Fault> faults = new ArrayList<>(shop.checkPrinter(question.printer()));
    question
        .atMost()
        .filter(limit -> !(limit > 0 && limit < 1))
        .ifPresent(
            limit ->
                faults.add(Fault.of("at-most", 100 * limit + " %", "above 0 and below 100 %")));
    RefusedException.when(faults);
    return new RiskDesk(now(nowNanos), shop.costs()).answer(question);
  }

  /** How long the batches of a hot end usually last, hours; empty while too few are known. */
  public OptionalDouble usualBatchHours(HotEnd hotEnd, long nowNanos) {
    return UsualBatch.hours(store, hotEnd, nowNanos);
  }

  private synchronized Outlook now(long nowNanos) {
    long revision = store.revision();
    Outlook last = kept;
    boolean good =
        last.revision() == revision
            && nowNanos >= last.atNanos()
            && nowNanos - last.atNanos() < STALE_NANOS;
    if (!good) {
      kept = reckoned(revision, nowNanos);
    }
    return kept;
  }

  private Outlook reckoned(long revision, long nowNanos) {
    Map<String, List<PartLives.Told>> told = lives.byKind(nowNanos);
    TreeSet<String> names = new TreeSet<>(shop.kindNames());
    names.addAll(told.keySet());
    Map<HotEnd, Duty> known = new TreeMap<>();
    Map<String, KindOutlook> kinds = new LinkedHashMap<>();
    for (String name : names) {
      List<PartLives.Told> parts = told.getOrDefault(name, List.of());
      Map<HotEnd, Duty> ofKind = new TreeMap<>();
      for (PartLives.Told part : parts) {
        part.part()
            .fittedOn()
            .ifPresent(
                place ->
                    ofKind.put(place, known.computeIfAbsent(place, p -> duties.of(p, nowNanos))));
      }
      kinds.put(name, KindOutlook.of(kind(name), shop.costs(), parts, ofKind, nowNanos));
    }
    return new Outlook(nowNanos, revision, kinds);
  }

  private Kind kind(String name) {
    return shop.kind(name)
        .orElseGet(
            () -> new Kind(name, 0, 0, Optional.empty(), Optional.empty(), Optional.empty()));
  }
}
