package meltkeeper.desk;

import java.time.ZoneId;
import java.util.List;
import java.util.function.Function;
import meltkeeper.part.Moments;
import meltkeeper.part.Part;
import meltkeeper.part.PartEvent;
import meltkeeper.part.Shelf;
import meltkeeper.store.Store;
import meltkeeper.store.StoreException;

/**
 * Enters an act in the store: load, apply, save; once more from the start when another program
 * saved in between.
 */
record Entering(Store store, ZoneId zone) {

  private static final int TRIES = 50;

  /**
   * An act applied, not saved yet.
   *
   * @param undo the parts before and after
   * @param entered the events that are new
   * @param done in words
   */
  record Step(Undo undo, List<PartEvent> entered, String done) {

    Step {
      entered = List.copyOf(entered);
    }

    /** The part that the act is about. */
    Part part() {
      return undo.after().get(undo.after().size() - 1);
    }
  }

  /**
   * Does it.
   *
   * @throws RefusedException when the act refuses
   * @throws StoreException when others keep saving in between
   */
  Step enter(Function<Shelf, Step> act) {
    for (int tries = 0; tries < TRIES; tries++) {
      long revision = store.revision();
      Step step = act.apply(new Shelf(store.parts(), zone));
      if (store.saveParts(revision, step.undo().after())) {
        return step;
      }
    }
    throw new StoreException(
        "the parts were changed by another program "
            + TRIES
            + " times in a row while this change was being entered; try again");
  }

  /** A part with more events, by the rules of the shelf. */
  Step with(Shelf shelf, Part part, List<PartEvent> entered) {
    RefusedException.when(shelf.check(part, entered));
    return new Step(
        new Undo(List.of(part), List.of(part.with(entered))), entered, words(part, entered));
  }

  /** What happened, in words: {@code L-014 was fitted on heron on 2026-03-02 08:00}. */
  String words(Part part, List<PartEvent> entered) {
    return part.id()
        + " was "
        + String.join(
            " and ",
            entered.stream()
                .map(event -> event.words() + " on " + Moments.words(event.atNanos(), zone))
                .toList());
  }
}
