package meltkeeper.desk;

import java.util.OptionalLong;
import java.util.function.Function;
import meltkeeper.part.Because;

/**
 * A part comes off.
 *
 * @param notThisPart true when the trouble came from elsewhere (wet filament, a tangle, grit)
 * @param at when, nanoseconds since 1970; empty for now
 */
public record RemovePart(Which which, Because because, boolean notThisPart, OptionalLong at) {

  /** How the part is named. Closed. */
  public sealed interface Which {

    /** One answer a case. */
    <R> R fold(Function<Id, R> id, Function<HeldBy, R> heldBy);

    /** By its own id. */
    record Id(String id) implements Which {
      @Override
      public <R> R fold(Function<Id, R> id, Function<HeldBy, R> heldBy) {
        return id.apply(this);
      }
    }

    /** As the one of a kind that a hot end holds at that time. */
    record HeldBy(String printer, int hotEnd, String kind) implements Which {
      @Override
      public <R> R fold(Function<Id, R> id, Function<HeldBy, R> heldBy) {
        return heldBy.apply(this);
      }
    }
  }
}
