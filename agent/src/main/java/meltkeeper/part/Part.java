package meltkeeper.part;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import meltkeeper.protocol.HotEnd;

/**
 * One physical item with its history.
 *
 * @param id the shop's own, by the rule of {@link Names}: {@code L-014}
 * @param kind name of its {@link Kind}
 * @param variant make or material that tells it from others of its kind; empty when there is none
 * @param addedNanos when the shop got to know it
 * @param paper a past kept on paper, for parts that were imported
 * @param events what happened, in order of time
 */
public record Part(
    String id,
    String kind,
    Optional<String> variant,
    long addedNanos,
    Optional<PaperPast> paper,
    List<PartEvent> events) {

  /**
   * Hours by temperature written down before the agent was there.
   *
   * @param ending how it ended; still fitted means that its life goes on
   */
  public record PaperPast(Exposure exposure, Ending ending) {}

  public Part {
    Names.checked("id", id);
    Names.checked("kind", kind);
    events = List.copyOf(events);
  }

  /** A new part without a history. */
  public static Part added(String id, String kind, Optional<String> variant, long atNanos) {
    return new Part(id, kind, variant, atNanos, Optional.empty(), List.of());
  }

  /** Its stays on hot ends, in order of time. */
  public List<Fitting> fittings() {
    List<Fitting> fittings = new ArrayList<>();
    Optional<PartEvent.Fitted> open = Optional.empty();
    for (PartEvent event : events) {
      if (event instanceof PartEvent.Fitted fitted) {
        open = Optional.of(fitted);
      } else if (open.isPresent()
          && (event instanceof PartEvent.Removed || event instanceof PartEvent.Retired)) {
        fittings.add(closed(open.get(), OptionalLong.of(event.atNanos())));
        open = Optional.empty();
      }
    }
    open.ifPresent(fitted -> fittings.add(closed(fitted, OptionalLong.empty())));
    return List.copyOf(fittings);
  }

  private static Fitting closed(PartEvent.Fitted fitted, OptionalLong until) {
    return new Fitting(fitted.hotEnd(), fitted.atNanos(), until, fitted.past());
  }

  /** Where it is fitted now. */
  public Optional<HotEnd> fittedOn() {
    List<Fitting> fittings = fittings();
    return fittings.isEmpty() || !fittings.get(fittings.size() - 1).isOpen()
        ? Optional.empty()
        : Optional.of(fittings.get(fittings.size() - 1).hotEnd());
  }

  /** True once it was thrown away, or ended on paper. */
  public boolean isRetired() {
    return events.stream().anyMatch(e -> e instanceof PartEvent.Retired)
        || (events.isEmpty()
            && paper.isPresent()
            && !paper.get().ending().equals(new Ending.Censored(Ending.Why.STILL_FITTED)));
  }

  /** How its life stands. */
  public Ending ending() {
    Ending ending = paper.map(PaperPast::ending).orElse(new Ending.Censored(Ending.Why.ON_SHELF));
    for (PartEvent event : events) {
      if (event instanceof PartEvent.Fitted) {
        ending = new Ending.Censored(Ending.Why.STILL_FITTED);
      } else if (event instanceof PartEvent.Removed removed) {
        ending = endingOf(removed);
      } else if (event instanceof PartEvent.Retired
          && !(ending instanceof Ending.Failed)
          && !ending.equals(new Ending.Censored(Ending.Why.EXCUSED))) {
        ending = new Ending.Censored(Ending.Why.RETIRED);
      }
    }
    return ending;
  }

  private static Ending endingOf(PartEvent.Removed removed) {
    if (removed.because().isFailure()) {
      return removed.excused()
          ? new Ending.Censored(Ending.Why.EXCUSED)
          : new Ending.Failed(removed.because());
    }
    return new Ending.Censored(
        removed.because() == Because.PRECAUTION ? Ending.Why.PRECAUTION : Ending.Why.INSPECTION);
  }
}
