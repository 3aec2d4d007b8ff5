package meltkeeper.desk;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.function.Function;
import meltkeeper.part.Moments;
import meltkeeper.part.Names;
import meltkeeper.part.Part;
import meltkeeper.part.PartEvent;
import meltkeeper.part.Shelf;
import meltkeeper.protocol.Fault;
import meltkeeper.protocol.HotEnd;
import meltkeeper.store.Store;

/**
 * What a shop does with its parts. An act is refused with every {@link Fault}, or done whole; it
 * may be told late, in any order, and hours move between parts accordingly. Safe for any thread,
 * and while an agent runs on the same store.
 *
 * <p>{@code nowNanos} is the wall clock's time, nanoseconds since 1970.
 *
 * @see RefusedException
 */
public final class PartActs {

  private final Shop shop;
  private final PartAnswers answers;
  private final Entering entering;

  PartActs(Store store, Shop shop, PartAnswers answers) {
    this.shop = shop;
    this.answers = answers;
    this.entering = new Entering(store, shop.zone());
  }

  /** Makes a part known. */
  public PartChange add(AddPart add, long nowNanos) {
    return act(
        shelf -> {
          List<Fault> faults = new ArrayList<>(Shelf.checkKind(add.kind(), shop.kindNames()));
          add.variant().flatMap(v -> Names.fault("variant", v)).ifPresent(faults::add);
          add.id().ifPresent(id -> faults.addAll(shelf.checkNewId(id)));
          RefusedException.when(faults);
          String id = add.id().orElseGet(() -> shelf.nextId(add.kind()));
          Part part = Part.added(id, add.kind(), add.variant(), nowNanos);
          return new Entering.Step(
              new Undo(List.of(), List.of(part)),
              List.of(),
              id + " is known as a new " + add.kind());
        });
  }

  /** Notes that a part went on a hot end. */
  public PartChange fit(FitPart fit, long nowNanos) {
    return act(
        shelf -> {
          Timing timing = new Timing(shop.zone(), nowNanos);
          long at = timing.of(fit.at());
          List<Fault> faults = new ArrayList<>();
          Optional<Part> part = find(shelf, fit.id(), faults);
          faults.addAll(shop.checkHotEnd(fit.printer(), fit.hotEnd()));
          faults.addAll(fit.faults());
          faults.addAll(timing.check("at", at));
          fit.off().ifPresent(off -> faults.addAll(timing.checkEnd(at, off.atNanos())));
          RefusedException.when(faults);
          HotEnd hotEnd = new HotEnd(fit.printer(), fit.hotEnd());
          List<PartEvent> entered = new ArrayList<>();
          entered.add(new PartEvent.Fitted(at, hotEnd, fit.past().map(FitPart.Past::checked)));
          fit.off()
              .ifPresent(
                  off ->
                      entered.add(
                          new PartEvent.Removed(off.atNanos(), off.because(), off.notThisPart())));
          return entering.with(shelf, part.orElseThrow(), entered);
        });
  }

  /** Notes that a part came off. */
  public PartChange remove(RemovePart remove, long nowNanos) {
    return act(
        shelf -> {
          Timing timing = new Timing(shop.zone(), nowNanos);
          long at = timing.of(remove.at());
          List<Fault> faults = new ArrayList<>(timing.check("at", at));
          Optional<Part> part = find(shelf, remove.which(), at, faults);
          RefusedException.when(faults);
          return entering.with(
              shelf,
              part.orElseThrow(),
              List.of(new PartEvent.Removed(at, remove.because(), remove.notThisPart())));
        });
  }

  /**
   * Notes that a part was cleaned.
   *
   * @param restores share of its age that this is believed to undo, 0 to 1
   */
  public PartChange clean(String id, double restores, OptionalLong when, long nowNanos) {
    return act(
        shelf -> {
          Timing timing = new Timing(shop.zone(), nowNanos);
          long at = timing.of(when);
          List<Fault> faults = new ArrayList<>();
          Optional<Part> part = find(shelf, id, faults);
          faults.addAll(timing.check("at", at));
          if (!(restores >= 0 && restores <= 1)) {
            faults.add(
                Fault.of(
                    "restores",
                    restores,
                    "0 to 1, the share of the part's age that the cleaning undoes",
                    "0 is no better than before, 1 is as good as new"));
          }
          RefusedException.when(faults);
          return entering.with(
              shelf, part.orElseThrow(), List.of(new PartEvent.Cleaned(at, restores)));
        });
  }

  /** Notes that a part was thrown away; takes it off if it was on a hot end. */
  public PartChange retire(String id, OptionalLong when, long nowNanos) {
    return act(
        shelf -> {
          Timing timing = new Timing(shop.zone(), nowNanos);
          long at = timing.of(when);
          List<Fault> faults = new ArrayList<>();
          Optional<Part> part = find(shelf, id, faults);
          faults.addAll(timing.check("at", at));
          RefusedException.when(faults);
          return entering.with(shelf, part.orElseThrow(), List.of(new PartEvent.Retired(at)));
        });
  }

  /**
   * Takes an entry back, as if it had never been made; hours move back.
   *
   * @param when of the event, to the minute or second as it is shown; empty for the last in time
   */
  public PartChange undo(String id, OptionalLong when) {
    return act(
        shelf -> {
          List<Fault> faults = new ArrayList<>();
          Optional<Part> found = find(shelf, id, faults);
          RefusedException.when(faults);
          Part part = found.orElseThrow();
          List<PartEvent> meant = Timing.meant(part.events(), when);
          if (meant.size() != 1) {
            throw new RefusedException(List.of(notOne(part, when, meant)));
          }
          PartEvent event = meant.get(0);
          RefusedException.when(shelf.checkWithout(part, event));
          String done =
              id + ": taken back that it was " + event.words() + " on " + words(event.atNanos());
          return new Entering.Step(
              new Undo(List.of(part), List.of(part.without(event))), List.of(event), done);
        });
  }

  private Fault notOne(Part part, OptionalLong when, List<PartEvent> meant) {
    List<String> known =
        (meant.isEmpty() ? part.events() : meant)
            .stream().map(e -> e.words() + " on " + words(e.atNanos())).toList();
    return Fault.of(
        "at",
        when.isPresent() ? words(when.getAsLong()) : "nothing",
        "the time of one thing that happened to " + part.id(),
        known.isEmpty() ? "nothing did yet" : "it was " + String.join("; ", known));
  }

  private Optional<Part> find(Shelf shelf, String id, List<Fault> faults) {
    Optional<Part> part = shelf.part(id);
    if (part.isEmpty()) {
      faults.add(shelf.unknown(id));
    }
    return part;
  }

  private Optional<Part> find(Shelf shelf, RemovePart.Which which, long at, List<Fault> faults) {
    return which.fold(
        id -> find(shelf, id.id(), faults),
        held -> {
          List<Fault> wrong = new ArrayList<>(shop.checkHotEnd(held.printer(), held.hotEnd()));
          wrong.addAll(Shelf.checkKind(held.kind(), shop.kindNames()));
          faults.addAll(wrong);
          if (!wrong.isEmpty()) {
            return Optional.empty();
          }
          HotEnd hotEnd = new HotEnd(held.printer(), held.hotEnd());
          Optional<Part> part = shelf.holder(hotEnd, held.kind(), at - 1);
          if (part.isEmpty()) {
            faults.add(
                Fault.of(
                    "kind",
                    held.kind(),
                    "a kind that " + hotEnd + " held just before " + words(at),
                    "part list --printer " + held.printer() + " shows what is on it now"));
          }
          return part;
        });
  }

  private PartChange act(Function<Shelf, Entering.Step> apply) {
    return answers.change(entering.enter(apply));
  }

  private String words(long nanos) {
    return Moments.words(nanos, shop.zone());
  }
}
