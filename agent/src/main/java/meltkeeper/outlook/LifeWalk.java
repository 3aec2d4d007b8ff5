package meltkeeper.outlook;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import meltkeeper.life.PartLife;
import meltkeeper.part.Ending;
import meltkeeper.part.Fitting;
import meltkeeper.part.Part;
import meltkeeper.part.PartEvent;
import meltkeeper.part.PriorPast;
import meltkeeper.store.Store;

/**
 * Walks through what happened to a part, and gathers its hours from the ledger on the way. A
 * failure after which the part was fitted again is a failure in the midst of its life; what it ran
 * elsewhere before its first hour here is an uncertain past, what it ran elsewhere later is taken
 * as told.
 */
final class LifeWalk {

  private final Store store;
  private final SpellBook book = new SpellBook();
  private Optional<PriorPast> past = Optional.empty();
  private Optional<PartEvent.Fitted> open = Optional.empty();
  private boolean openOnPaper;
  private boolean failed;
  private double restoredSinceFailure;
  private long fromNanos;

  private LifeWalk(Store store) {
    this.store = store;
  }

  static PartLife of(Store store, Part part) {
    LifeWalk walk = new LifeWalk(store);
    part.paper().ifPresent(walk::begin);
    part.events().forEach(walk::pass);
    walk.runUntil(Long.MAX_VALUE);
    Ending ending = part.ending();
    return new PartLife(
        part.id(),
        part.variant(),
        walk.book.spells(),
        ending,
        walk.lastCelsius(part, ending),
        walk.past);
  }

  private void begin(Part.PaperPast paper) {
    book.ran(paper.exposure());
    failed = paper.ending() instanceof Ending.Failed;
    openOnPaper = paper.ending().equals(new Ending.Censored(Ending.Why.STILL_FITTED));
  }

  private void pass(PartEvent event) {
    if (event instanceof PartEvent.Fitted fitted) {
      fitted(fitted);
    } else if (event instanceof PartEvent.Cleaned cleaned) {
      cleaned(cleaned);
    } else if (event instanceof PartEvent.Removed removed && (open.isPresent() || openOnPaper)) {
      off(removed.atNanos());
      failed = removed.because().isFailure() && !removed.excused();
    } else if (event instanceof PartEvent.Retired retired) {
      off(retired.atNanos());
    }
  }

  private void fitted(PartEvent.Fitted fitted) {
    if (failed) {
      book.failed();
      book.cleaned(restoredSinceFailure);
      failed = false;
      restoredSinceFailure = 0;
    }
    if (book.isEmpty() && past.isEmpty()) {
      past = fitted.past();
    } else {
      fitted.past().ifPresent(elsewhere -> book.ran(elsewhere.exposure()));
    }
    open = Optional.of(fitted);
    openOnPaper = false;
    fromNanos = fitted.atNanos();
  }

  private void cleaned(PartEvent.Cleaned cleaned) {
    if (failed) {
      restoredSinceFailure = 1 - (1 - restoredSinceFailure) * (1 - cleaned.restores());
    } else {
      runUntil(cleaned.atNanos());
      book.cleaned(cleaned.restores());
    }
  }

  private void off(long atNanos) {
    runUntil(atNanos);
    open = Optional.empty();
    openOnPaper = false;
  }

  private void runUntil(long nanos) {
    open.ifPresent(fitted -> book.ran(store.tally(fitted.hotEnd(), fromNanos, nanos)));
    fromNanos = nanos;
  }

  private OptionalDouble lastCelsius(Part part, Ending ending) {
    List<Fitting> stays = part.fittings();
    return ending instanceof Ending.Failed && !stays.isEmpty()
        ? LastHour.celsius(store, stays.get(stays.size() - 1))
        : OptionalDouble.empty();
  }
}
