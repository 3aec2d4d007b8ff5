package meltkeeper.part;

import java.util.ArrayList;
import java.util.Comparator;
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

  /** Where it was at that time: a stay holds its beginning, not its end. */
  public Optional<Fitting> fittingAt(long nanos) {
    return fittings().stream().filter(stay -> stay.holds(nanos)).findFirst();
  }

  /** True once it was thrown away, or ended on paper and was not touched since. */
  public boolean isRetired() {
    return events.stream().anyMatch(e -> e instanceof PartEvent.Retired)
        || (events.isEmpty() && paper.isPresent() && !isOnPrinterByPaper());
  }

  /** True when the paper left it on a printer. */
  boolean isOnPrinterByPaper() {
    return paper
        .filter(p -> p.ending().equals(new Ending.Censored(Ending.Why.STILL_FITTED)))
        .isPresent();
  }

  /** Removals that took nothing off, since the part was not fitted just before them. */
  public List<PartEvent.Removed> idleRemovals() {
    List<PartEvent.Removed> idle = new ArrayList<>();
    boolean fitted = isOnPrinterByPaper();
    for (PartEvent event : events) {
      if (event instanceof PartEvent.Removed removed && !fitted) {
        idle.add(removed);
      }
      fitted = isFittedAfter(event, fitted);
    }
    return List.copyOf(idle);
  }

  private static boolean isFittedAfter(PartEvent event, boolean before) {
    return event instanceof PartEvent.Fitted
        || (before && !(event instanceof PartEvent.Removed || event instanceof PartEvent.Retired));
  }

  /** How its life stands. Removals that took nothing off do not count. */
  public Ending ending() {
    Ending ending = paper.map(PaperPast::ending).orElse(new Ending.Censored(Ending.Why.ON_SHELF));
    boolean fitted = isOnPrinterByPaper();
    for (PartEvent event : events) {
      if (event instanceof PartEvent.Fitted) {
        ending = new Ending.Censored(Ending.Why.STILL_FITTED);
      } else if (event instanceof PartEvent.Removed removed && fitted) {
        ending = endingOf(removed);
      } else if (event instanceof PartEvent.Retired
          && !(ending instanceof Ending.Failed)
          && !ending.equals(new Ending.Censored(Ending.Why.EXCUSED))) {
        ending = new Ending.Censored(Ending.Why.RETIRED);
      }
      fitted = isFittedAfter(event, fitted);
    }
    return ending;
  }

  /** The same part with more events, in order of time; known since the earliest at the latest. */
  public Part with(List<? extends PartEvent> more) {
    List<PartEvent> all = new ArrayList<>(events);
    all.addAll(more);
    all.sort(Comparator.comparingLong(PartEvent::atNanos));
    long known = all.isEmpty() ? addedNanos : Math.min(addedNanos, all.get(0).atNanos());
    return new Part(id, kind, variant, known, paper, all);
  }

  /** The same part without one of its events. */
  public Part without(PartEvent event) {
    List<PartEvent> rest = new ArrayList<>(events);
    rest.remove(event);
    return new Part(id, kind, variant, addedNanos, paper, rest);
  }

  private static Ending endingOf(PartEvent.Removed removed) {
    return removed.because().isFailure() && removed.excused()
        ? new Ending.Censored(Ending.Why.EXCUSED)
        : Ending.of(removed.because());
  }
}
