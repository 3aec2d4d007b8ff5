package meltkeeper.life;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import meltkeeper.part.Ending;
import meltkeeper.part.Exposure;
import meltkeeper.part.PriorPast;

/**
 * What is known of one part's life.
 *
 * @param id the part's own; unique among the parts that are looked at together
 * @param variant make or material within its kind
 * @param spells hot time in view, cut at each cleaning, in order of time
 * @param ending how it ended, or that it has not
 * @param lastCelsius mean temperature of its last hot hour, where that is known
 * @param past what it had run before it came into view
 */
public record PartLife(
    String id,
    Optional<String> variant,
    List<Spell> spells,
    Ending ending,
    OptionalDouble lastCelsius,
    Optional<PriorPast> past) {

  public PartLife {
    spells = List.copyOf(spells);
  }

  /** A part that was never cleaned and that was new when it came into view. */
  public static PartLife of(String id, Exposure hot, Ending ending) {
    return new PartLife(
        id,
        Optional.empty(),
        List.of(Spell.of(hot)),
        ending,
        OptionalDouble.empty(),
        Optional.empty());
  }

  public PartLife withVariant(String name) {
    return new PartLife(id, Optional.of(name), spells, ending, lastCelsius, past);
  }

  public PartLife withPast(PriorPast before) {
    return new PartLife(id, variant, spells, ending, lastCelsius, Optional.of(before));
  }

  public PartLife withLastCelsius(double celsius) {
    return new PartLife(id, variant, spells, ending, OptionalDouble.of(celsius), past);
  }

  public PartLife withSpells(List<Spell> others) {
    return new PartLife(id, variant, others, ending, lastCelsius, past);
  }

  /** The same part after so much more hot time in its last spell. */
  PartLife runningOn(Exposure more) {
    List<Spell> longer = new ArrayList<>(spells);
    boolean goesOn = !longer.isEmpty() && !longer.get(longer.size() - 1).failed();
    Spell last = goesOn ? longer.remove(longer.size() - 1) : Spell.of(Exposure.NONE);
    longer.add(new Spell(last.hot().plus(more), last.idle(), last.restoredBefore()));
    return withSpells(longer);
  }

  /** True when it reached its end. */
  public boolean hasFailed() {
    return ending instanceof Ending.Failed;
  }

  /** How often it failed: its end, and failures after which it was used again. */
  public int failures() {
    return (hasFailed() ? 1 : 0) + (int) spells.stream().filter(Spell::failed).count();
  }

  /** Hours in view, by the clock. */
  public double clockHours() {
    return spells.stream().mapToDouble(s -> s.hot().hotHours()).sum();
  }

  /** True when a cleaning was followed by hot time, so that the part has something to say of it. */
  boolean tellsOfCleaning() {
    return spells.stream().skip(1).anyMatch(s -> s.restoredBefore() > 0 && s.hot().hotNanos() > 0);
  }
}
