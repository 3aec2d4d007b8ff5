package meltkeeper.desk;

import java.util.List;
import meltkeeper.part.Part;

/**
 * What takes an act back.
 *
 * @param before the parts as the act found them; one that it made known is not among them
 * @param after the same parts, and those made known, as the act left them
 */
public record Undo(List<Part> before, List<Part> after) {

  public Undo {
    before = List.copyOf(before);
    after = List.copyOf(after);
  }

  /** The parts as they are to be; one that was made known stays, on the shelf. */
  List<Part> restored() {
    return after.stream().map(this::restored).toList();
  }

  private Part restored(Part left) {
    return before.stream()
        .filter(part -> part.id().equals(left.id()))
        .findFirst()
        .orElseGet(() -> Part.added(left.id(), left.kind(), left.variant(), left.addedNanos()));
  }
}
