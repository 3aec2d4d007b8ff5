package meltkeeper.desk;

import java.util.ArrayList;
import java.util.List;
import meltkeeper.part.Ending;
import meltkeeper.part.Part;
import meltkeeper.part.Shelf;
import meltkeeper.protocol.Fault;
import meltkeeper.store.Store;
import meltkeeper.store.StoreException;

/** Takes in a past that a shop kept on paper. Safe for any thread. */
public final class PaperDesk {

  private static final int TRIES = 50;

  private final Store store;
  private final Shop shop;

  PaperDesk(Store store, Shop shop) {
    this.store = store;
    this.shop = shop;
  }

  /**
   * Adds every part of a table {@code id,kind,ended,temperature,hours}, one row a part and
   * temperature; all of it, or nothing.
   *
   * @param name of the table, for the faults: its file
   * @param text as it is in the file
   * @throws RefusedException with every fault, each with its line
   */
  public PaperAnswer take(String name, String text, long nowNanos) {
    for (int tries = 0; tries < TRIES; tries++) {
      long revision = store.revision();
      Shelf shelf = new Shelf(store.parts(), shop.zone());
      List<Fault> faults = new ArrayList<>();
      List<Part> parts =
          new PaperTable(name, shelf, shop.kindNames(), faults).parts(text, nowNanos);
      RefusedException.when(faults);
      if (store.saveParts(revision, parts)) {
        return answer(parts);
      }
    }
    throw new StoreException(
        "the parts were changed by another program " + TRIES + " times in a row; try again");
  }

  private static PaperAnswer answer(List<Part> parts) {
    long nanos = parts.stream().mapToLong(part -> PartHeats.told(part).hotNanos()).sum();
    long failures = parts.stream().filter(part -> part.ending() instanceof Ending.Failed).count();
    return new PaperAnswer(
        parts.size(),
        PartLine.hours(nanos),
        (int) failures,
        (int) parts.stream().filter(part -> !part.isRetired()).count(),
        parts.stream().map(Part::id).toList());
  }
}
