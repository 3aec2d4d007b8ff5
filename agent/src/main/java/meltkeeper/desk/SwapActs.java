package meltkeeper.desk;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.stream.Stream;
import meltkeeper.part.Moments;
import meltkeeper.part.Part;
import meltkeeper.part.PartEvent;
import meltkeeper.part.Shelf;
import meltkeeper.protocol.Fault;
import meltkeeper.protocol.HotEnd;
import meltkeeper.store.Store;

/**
 * What a shop does in one go beside a printer: swap a part, say whose fault a jam was, take the
 * last act back. Each is refused with every {@link Fault}, or done whole. Safe for any thread.
 *
 * <p>{@code nowNanos} is the wall clock's time, nanoseconds since 1970.
 */
public final class SwapActs {

  private final Shop shop;
  private final PartAnswers answers;
  private final Entering entering;

  SwapActs(Store store, Shop shop, PartAnswers answers) {
    this.shop = shop;
    this.answers = answers;
    this.entering = new Entering(store, shop.zone());
  }

  /** Takes the part of a kind off, if there is one, and fits another at the same moment. */
  public PartChange swap(SwapParts swap, long nowNanos) {
    return answers.change(
        entering.enter(
            shelf -> {
              Timing timing = new Timing(shop.zone(), nowNanos);
              long at = timing.of(swap.at());
              List<Fault> faults = new ArrayList<>(shop.checkHotEnd(swap.printer(), swap.hotEnd()));
              faults.addAll(Shelf.checkKind(swap.kind(), shop.kindNames()));
              faults.addAll(timing.check("at", at));
              swap.part().ifPresent(id -> faults.addAll(checkPart(shelf, id, swap.kind())));
              RefusedException.when(faults);
              return swapped(shelf, swap, at);
            }));
  }

  private static List<Fault> checkPart(Shelf shelf, String id, String kind) {
    Optional<Part> part = shelf.part(id);
    if (part.isEmpty()) {
      return List.of(shelf.unknown(id));
    }
    return part.get().kind().equals(kind)
        ? List.of()
        : List.of(Fault.of("part", id, "a " + kind, id + " is a " + part.get().kind()));
  }

  private Entering.Step swapped(Shelf shelf, SwapParts swap, long at) {
    HotEnd hotEnd = new HotEnd(swap.printer(), swap.hotEnd());
    Optional<Entering.Step> off =
        shelf
            .holder(hotEnd, swap.kind(), at - 1)
            .map(
                old ->
                    entering.with(
                        shelf,
                        old,
                        List.of(new PartEvent.Removed(at, swap.because(), swap.notThisPart()))));
    Shelf cleared = off.map(step -> replaced(shelf, step.part())).orElse(shelf);
    Optional<Part> known = swap.part().flatMap(cleared::part);
    Part fresh =
        known.orElseGet(
            () -> Part.added(shelf.nextId(swap.kind()), swap.kind(), Optional.empty(), at));
    Entering.Step on =
        entering.with(cleared, fresh, List.of(new PartEvent.Fitted(at, hotEnd, Optional.empty())));
    return new Entering.Step(
        new Undo(
            Stream.concat(off.stream().flatMap(s -> s.undo().before().stream()), known.stream())
                .toList(),
            Stream.concat(off.stream().map(Entering.Step::part), Stream.of(on.part())).toList()),
        on.entered(),
        off.map(step -> step.done() + "; ").orElse("") + on.done());
  }

  private static Shelf replaced(Shelf shelf, Part part) {
    return new Shelf(
        shelf.parts().stream().map(p -> p.id().equals(part.id()) ? part : p).toList(),
        shelf.zone());
  }

  /**
   * Says whose fault a jam or wear was.
   *
   * @param notThisPart true when the trouble came from elsewhere
   * @param when the part came off; empty for the last time that it did
   */
  public PartChange blame(String id, boolean notThisPart, OptionalLong when) {
    return answers.change(
        entering.enter(
            shelf -> {
              Part part =
                  shelf
                      .part(id)
                      .orElseThrow(() -> new RefusedException(List.of(shelf.unknown(id))));
              List<PartEvent> failures =
                  part.events().stream()
                      .filter(e -> e instanceof PartEvent.Removed r && r.because().isFailure())
                      .toList();
              List<PartEvent> meant = Timing.meant(failures, when);
              if (meant.size() != 1 || !(meant.get(0) instanceof PartEvent.Removed removed)) {
                throw new RefusedException(
                    List.of(
                        Fault.of(
                            "part",
                            id,
                            "a part that came off because of a jam or wear"
                                + when.stream()
                                    .mapToObj(at -> " on " + Moments.words(at, shop.zone()))
                                    .findFirst()
                                    .orElse(""),
                            "part show " + id + " tells what happened to it")));
              }
              PartEvent.Removed told =
                  new PartEvent.Removed(removed.atNanos(), removed.because(), notThisPart);
              return new Entering.Step(
                  new Undo(List.of(part), List.of(part.without(removed).with(List.of(told)))),
                  List.of(told),
                  id
                      + ": what happened on "
                      + Moments.words(told.atNanos(), shop.zone())
                      + (notThisPart ? " was not its fault" : " was its own fault"));
            }));
  }

  /**
   * Takes an act back, whole, if nothing happened to its parts since.
   *
   * @throws RefusedException when something did
   */
  public PartChange takeBack(Undo undo) {
    return answers.change(
        entering.enter(
            shelf -> {
              List<Fault> faults =
                  undo.after().stream()
                      .filter(part -> !shelf.part(part.id()).equals(Optional.of(part)))
                      .map(
                          part ->
                              Fault.of(
                                  "part",
                                  part.id(),
                                  "a part to which nothing happened since",
                                  "take back its entries one by one: part undo " + part.id()))
                      .toList();
              RefusedException.when(faults);
              return new Entering.Step(
                  new Undo(undo.after(), undo.restored()),
                  List.of(),
                  "taken back; "
                      + String.join(" and ", undo.after().stream().map(Part::id).sorted().toList())
                      + " stand as before");
            }));
  }
}
