package meltkeeper.part;

import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.TreeSet;
import java.util.function.Predicate;
import meltkeeper.protocol.Fault;
import meltkeeper.protocol.HotEnd;
import meltkeeper.protocol.Nearest;

/**
 * Every part of the shop, and the rules that keep their histories true: a part is in one place at a
 * time, a hot end holds one part of a kind at a time, and nothing happens to a part that was thrown
 * away. Entries may come in any order of time.
 *
 * @param parts all that were ever known
 * @param zone in which the faults tell times
 */
public record Shelf(List<Part> parts, ZoneId zone) {

  public Shelf {
    parts = List.copyOf(parts);
  }

  /** The part of that id. */
  public Optional<Part> part(String id) {
    return parts.stream().filter(part -> part.id().equals(id)).findFirst();
  }

  /** The fault of an id that no part has. */
  public Fault unknown(String id) {
    List<String> ids = parts.stream().map(Part::id).toList();
    return Fault.of(
        "part",
        id,
        "the id of a part that was added",
        Nearest.to(id, ids)
            .map(near -> "did you mean " + near + "?")
            .orElse(
                ids.isEmpty() ? "no part is known yet: part add KIND" : "part list shows them"));
  }

  /** The part of a kind that a hot end held at that time. */
  public Optional<Part> holder(HotEnd hotEnd, String kind, long atNanos) {
    return parts.stream()
        .filter(part -> part.kind().equals(kind))
        .filter(part -> part.fittingAt(atNanos).filter(s -> s.hotEnd().equals(hotEnd)).isPresent())
        .findFirst();
  }

  /** The next free id of a kind: its first letter and a number above all in use. */
  public String nextId(String kind) {
    String prefix = kind.substring(0, kind.offsetByCodePoints(0, 1)).toUpperCase(Locale.ROOT) + "-";
    long highest =
        parts.stream()
            .map(Part::id)
            .filter(id -> id.startsWith(prefix))
            .map(id -> id.substring(prefix.length()))
            .filter(number -> number.matches("[0-9]{1,9}"))
            .mapToLong(Long::parseLong)
            .max()
            .orElse(0);
    return prefix + String.format("%03d", highest + 1);
  }

  /** Every fault of an id for a new part. */
  public List<Fault> checkNewId(String id) {
    List<Fault> faults = new ArrayList<>();
    Names.fault("id", id).ifPresent(faults::add);
    parts.stream()
        .map(Part::id)
        .filter(id::equalsIgnoreCase)
        .findFirst()
        .ifPresent(
            taken ->
                faults.add(
                    Fault.of(
                        "id",
                        id,
                        "an id that no part has",
                        taken + " is known already: part show " + taken)));
    return faults;
  }

  /** Every fault of a kind that is not configured. */
  public static List<Fault> checkKind(String kind, Collection<String> known) {
    if (known.contains(kind)) {
      return List.of();
    }
    return List.of(
        Fault.of(
            "kind",
            kind,
            known.isEmpty()
                ? "a kind of the configuration, which names none"
                : "one of " + String.join(", ", new TreeSet<>(known)),
            Nearest.to(kind, known)
                .map(near -> "did you mean " + near + "?")
                .orElse("or add it under kinds: in the configuration")));
  }

  /**
   * Every fault that entering those events for a part would bring, none when all is well.
   *
   * @param part as it is known now
   * @param entered the new events, in order of time
   */
  public List<Fault> check(Part part, List<? extends PartEvent> entered) {
    List<Fault> faults = new ArrayList<>();
    Part next = part.with(entered);
    for (PartEvent event : entered) {
      faults.addAll(checkInstant(part, event));
      faults.addAll(checkRetirement(part, event));
      if (event instanceof PartEvent.Removed removed && next.idleRemovals().contains(removed)) {
        faults.add(notFitted(part, removed));
      }
    }
    if (faults.isEmpty()) {
      faults.addAll(checkStays(next, event -> entered.contains(event)));
    }
    return faults;
  }

  /** Every fault that taking an event back would bring, none when all is well. */
  public List<Fault> checkWithout(Part part, PartEvent event) {
    Part next = part.without(event);
    return checkStays(next, none -> false).isEmpty()
        ? List.of()
        : List.of(
            Fault.of(
                "at",
                words(event),
                "an entry that no later fitting rests on",
                "without it "
                    + part.id()
                    + " would still be where it was when "
                    + nextFitting(part, event)
                    + "; take that back first with part undo, or enter the right time of this one"
                    + " before taking the wrong one back"));
  }

  private String nextFitting(Part part, PartEvent event) {
    return parts.stream()
        .filter(other -> other.kind().equals(part.kind()))
        .flatMap(
            other ->
                other.fittings().stream()
                    .filter(stay -> stay.fromNanos() >= event.atNanos())
                    .filter(stay -> other.id().equals(part.id()) || isWhere(stay, part, event))
                    .map(stay -> new Arrival(other.id(), stay)))
        .min(Comparator.comparingLong(arrival -> arrival.stay().fromNanos()))
        .map(
            arrival ->
                arrival.id()
                    + " was fitted on "
                    + arrival.stay().hotEnd()
                    + " on "
                    + words(arrival.stay().fromNanos()))
        .orElse("another came");
  }

  /** A part's coming to a hot end. */
  private record Arrival(String id, Fitting stay) {}

  private static boolean isWhere(Fitting stay, Part part, PartEvent event) {
    return part.fittingAt(event.atNanos() - 1)
        .filter(was -> was.hotEnd().equals(stay.hotEnd()))
        .isPresent();
  }

  private List<Fault> checkInstant(Part part, PartEvent event) {
    return part.events().stream()
        .filter(known -> known.atNanos() == event.atNanos())
        .map(
            known ->
                Fault.of(
                    "at",
                    words(event),
                    "a time at which nothing else happened to " + part.id(),
                    "at that very instant it was " + known.words() + "; give it another second"))
        .toList();
  }

  private List<Fault> checkRetirement(Part part, PartEvent event) {
    List<Fault> faults = new ArrayList<>();
    for (PartEvent known : part.events()) {
      if (known instanceof PartEvent.Retired && known.atNanos() < event.atNanos()) {
        faults.add(
            Fault.of(
                "part",
                part.id(),
                "a part that was not thrown away by then",
                "it was retired on "
                    + words(known)
                    + "; add its successor with part add, or take that back with part undo "
                    + part.id()));
      } else if (event instanceof PartEvent.Retired && known.atNanos() > event.atNanos()) {
        faults.add(
            Fault.of(
                "at",
                words(event),
                "a time after everything else that happened to " + part.id(),
                "it was " + known.words() + " on " + words(known)));
        break;
      }
    }
    if (part.events().isEmpty() && part.isRetired() && event instanceof PartEvent.Fitted) {
      faults.add(
          Fault.of(
              "part",
              part.id(),
              "a part that has not ended",
              "it ended on paper; if it is to be used again, enter its cleaning first: part clean "
                  + part.id()));
    }
    return faults;
  }

  private Fault notFitted(Part part, PartEvent.Removed removed) {
    String since =
        part.fittings().stream()
            .filter(stay -> stay.until() <= removed.atNanos())
            .reduce((one, next) -> next)
            .map(stay -> "it was taken off " + stay.hotEnd() + " on " + words(stay.until()))
            .orElse("it was not fitted by then");
    return Fault.of(
        "part",
        part.id(),
        "a part that was fitted just before " + words(removed),
        since + "; enter the fitting first: part fit " + part.id());
  }

  /** Faults of a history as it would be; a fault is told from the side of what is new. */
  private List<Fault> checkStays(Part next, Predicate<PartEvent> isNew) {
    List<Fault> faults = new ArrayList<>();
    Optional<PartEvent.Fitted> open = Optional.empty();
    for (PartEvent event : next.events()) {
      if (event instanceof PartEvent.Fitted fitted) {
        if (open.isPresent()) {
          faults.add(twice(next, open.get(), fitted, isNew.test(fitted)));
        }
        open = Optional.of(fitted);
      } else if (event instanceof PartEvent.Removed || event instanceof PartEvent.Retired) {
        open = Optional.empty();
      }
    }
    for (Fitting stay : next.fittings()) {
      parts.stream()
          .filter(other -> !other.id().equals(next.id()) && other.kind().equals(next.kind()))
          .forEach(
              other ->
                  other.fittings().stream()
                      .filter(s -> s.hotEnd().equals(stay.hotEnd()) && s.overlaps(stay))
                      .findFirst()
                      .ifPresent(s -> faults.add(taken(next, stay, other, s))));
    }
    return faults;
  }

  private Fault twice(
      Part part, PartEvent.Fitted first, PartEvent.Fitted second, boolean isSecondNew) {
    if (isSecondNew) {
      return Fault.of(
          "part",
          part.id(),
          "a part that is on no hot end at " + words(second),
          "it is on "
              + first.hotEnd()
              + " since "
              + words(first)
              + "; enter first when it came off: part remove "
              + part.id()
              + " --because REASON --at TIME");
    }
    return Fault.of(
        "until",
        "open",
        "a stay that ends before " + words(second),
        part.id()
            + " was fitted on "
            + second.hotEnd()
            + " then; say when it came off "
            + first.hotEnd()
            + " before that: --until TIME --because REASON");
  }

  private Fault taken(Part part, Fitting stay, Part other, Fitting held) {
    if (held.fromNanos() <= stay.fromNanos()) {
      return Fault.of(
          "printer",
          stay.hotEnd(),
          "a hot end that holds no " + part.kind() + " at " + words(stay.fromNanos()),
          other.id()
              + " is there since "
              + words(held.fromNanos())
              + (held.isOpen() ? "" : " until " + words(held.until()))
              + "; "
              + (held.isOpen() ? "take it off first" : "if it came off sooner, enter that first")
              + ": part remove "
              + other.id()
              + " --because REASON --at TIME");
    }
    return Fault.of(
        "until",
        stay.isOpen() ? "open" : words(stay.until()),
        "a stay on " + stay.hotEnd() + " that ends by " + words(held.fromNanos()),
        other.id()
            + " was fitted there then; say when "
            + part.id()
            + " came off: --until TIME --because REASON");
  }

  private String words(PartEvent event) {
    return words(event.atNanos());
  }

  private String words(long nanos) {
    return Moments.words(nanos, zone);
  }
}
