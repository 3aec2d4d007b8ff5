package meltkeeper.desk;

import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.math.BigDecimal;
import java.time.Instant;
import java.util.List;
import java.util.Optional;

/**
 * A part with its history.
 *
 * @param stays on hot ends, in order of time
 * @param history what happened to it, in order of time
 */
public record PartAnswer(
    @JsonUnwrapped PartLine line, Instant added, List<Stay> stays, List<Event> history) {

  public PartAnswer {
    stays = List.copyOf(stays);
    history = List.copyOf(history);
  }

  /**
   * A stretch of time on a hot end.
   *
   * @param until empty while it lasts
   * @param shared edges of it at which hours were shared in proportion to time
   */
  public record Stay(
      String printer,
      int hotEnd,
      Instant from,
      Optional<Instant> until,
      BigDecimal hotHours,
      List<SharedEdge> shared) {

    public Stay {
      shared = List.copyOf(shared);
    }
  }

  /**
   * Something that happened.
   *
   * @param what in words: {@code fitted on heron}
   * @param detail what else was told of it; empty for nothing
   */
  public record Event(Instant at, String what, String detail) {}
}
