package meltkeeper.store;

import java.util.Optional;
import meltkeeper.protocol.HotEnd;

/** What an alert is raised for. The family is closed; {@link #written} tells the cases apart. */
public sealed interface Subject {

  /** The printer concerned. */
  default Optional<String> printerName() {
    return place().map(HotEnd::printer);
  }

  /** The hot end concerned. */
  default Optional<HotEnd> place() {
    return Optional.empty();
  }

  /** The part concerned. */
  default Optional<String> partId() {
    return Optional.empty();
  }

  /** One text for each subject, {@code hot-end heron/0}; {@link #read} takes it back. */
  String written();

  /** The agent and its store. */
  record OfAgent() implements Subject {
    @Override
    public String written() {
      return "agent";
    }
  }

  /** A whole printer. */
  record OfPrinter(String name) implements Subject {
    @Override
    public Optional<String> printerName() {
      return Optional.of(name);
    }

    @Override
    public String written() {
      return "printer " + name;
    }
  }

  /** One hot end. */
  record OfHotEnd(HotEnd hotEnd) implements Subject {
    @Override
    public Optional<HotEnd> place() {
      return Optional.of(hotEnd);
    }

    @Override
    public String written() {
      return "hot-end " + SubjectText.of(hotEnd);
    }
  }

  /**
   * A part that is fitted.
   *
   * @param id without a space
   */
  record OfPart(String id, HotEnd on) implements Subject {
    @Override
    public Optional<HotEnd> place() {
      return Optional.of(on);
    }

    @Override
    public Optional<String> partId() {
      return Optional.of(id);
    }

    @Override
    public String written() {
      return "part " + id + " " + SubjectText.of(on);
    }
  }

  /**
   * The subject of a text.
   *
   * @throws IllegalArgumentException for a text that {@link #written} never gave
   */
  static Subject read(String written) {
    return SubjectText.read(written);
  }
}
