package meltkeeper.part;

import java.util.Optional;
import meltkeeper.protocol.HotEnd;

/** Something that happened to a part, in the order in which it is told. Closed. */
public sealed interface PartEvent {

  /** When it happened, nanoseconds since 1970. */
  long atNanos();

  /** What happened, to follow "it was": {@code fitted on heron}. */
  String words();

  /** What else was told of it; empty for nothing. */
  String detail();

  /** Fitted on a hot end, perhaps with a past from elsewhere. */
  record Fitted(long atNanos, HotEnd hotEnd, Optional<PriorPast> past) implements PartEvent {
    @Override
    public String words() {
      return "fitted on " + hotEnd;
    }

    @Override
    public String detail() {
      return past.map(PriorPast::words).orElse("");
    }
  }

  /**
   * Taken off.
   *
   * @param excused true when the trouble came from elsewhere (wet filament, a tangle, grit)
   */
  record Removed(long atNanos, Because because, boolean excused) implements PartEvent {
    @Override
    public String words() {
      return "taken off because of " + because.word();
    }

    @Override
    public String detail() {
      return excused ? "not the fault of this part" : "";
    }
  }

  /**
   * Cleaned, on the printer or off it.
   *
   * @param restores share of its age that the cleaning is believed to undo, 0 to 1
   */
  record Cleaned(long atNanos, double restores) implements PartEvent {
    public Cleaned {
      if (!(restores >= 0 && restores <= 1)) {
        throw new IllegalArgumentException("a cleaning restores 0 to 1, not " + restores);
      }
    }

    @Override
    public String words() {
      return "cleaned";
    }

    @Override
    public String detail() {
      return "believed to restore " + restores;
    }
  }

  /** Thrown away; never to be fitted again. */
  record Retired(long atNanos) implements PartEvent {
    @Override
    public String words() {
      return "retired";
    }

    @Override
    public String detail() {
      return "";
    }
  }
}
