package meltkeeper.config;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import meltkeeper.part.Belief;
import meltkeeper.part.CleaningPlan;
import meltkeeper.part.Kind;

/** Reads one kind of part. */
final class KindReader {

  /**
   * Kinds that need no section: guesses for a shop that has none of its own yet. Six hundred hours
   * for a liner is common practice, no source; the others follow from it by judgement.
   */
  static final Map<String, Kind> KNOWN = known();

  /** Ten kelvin below what PTFE stands continuously (260 °C). */
  private static final double LINER_LIMIT_CELSIUS = 250;

  private KindReader() {}

  private static Map<String, Kind> known() {
    Map<String, Kind> known = new LinkedHashMap<>();
    known.put("liner", kind("liner", 600, 0.5, 2.5, OptionalDouble.of(LINER_LIMIT_CELSIUS)));
    known.put("nozzle", kind("nozzle", 1200, 0.5, 2, OptionalDouble.empty()));
    known.put("heat-break", kind("heat-break", 5000, 0.7, 2, OptionalDouble.empty()));
    return known;
  }

  private static Kind kind(
      String name, double lifeHours, double spread, double shape, OptionalDouble limit) {
    Belief belief =
        new Belief(
            lifeHours,
            spread,
            shape,
            Keys.SHAPE_SPREAD.defaultValue(),
            Keys.HALVING.defaultValue(),
            Keys.HALVING_SPREAD.defaultValue(),
            Keys.BELIEF_AT.defaultValue());
    return new Kind(
        name,
        Keys.PRICE.defaultValue(),
        Keys.SWAP_MINUTES.defaultValue(),
        Optional.of(belief),
        Optional.empty(),
        Optional.empty(),
        limit);
  }

  static Kind read(String name, Entry entry) {
    Fields fields = Fields.of(entry, Section.KIND);
    Optional<Belief> usual = Optional.ofNullable(KNOWN.get(name)).flatMap(Kind::belief);
    return new Kind(
        name,
        fields.get(Keys.PRICE),
        fields.get(Keys.SWAP_MINUTES),
        fields.has(Keys.BELIEF) ? readBelief(fields.entryOrBlank(Keys.BELIEF), usual) : usual,
        fields
            .entry(Keys.HABIT)
            .flatMap(habit -> Fields.of(habit, Section.HABIT).need(Keys.HABIT_EVERY)),
        fields.entry(Keys.CLEANING).map(KindReader::readCleaning),
        limit(fields, name));
  }

  private static CleaningPlan readCleaning(Entry entry) {
    Fields fields = Fields.of(entry, Section.CLEANING);
    return new CleaningPlan(
        fields.get(Keys.CLEANING_MINUTES),
        fields.get(Keys.CLEANING_MONEY),
        fields.get(Keys.CLEANING_RESTORES));
  }

  private static OptionalDouble limit(Fields fields, String name) {
    return fields
        .find(Keys.LIMIT)
        .map(OptionalDouble::of)
        .orElseGet(
            () ->
                Optional.ofNullable(KNOWN.get(name))
                    .map(Kind::limitCelsius)
                    .orElse(OptionalDouble.empty()));
  }

  private static Optional<Belief> readBelief(Entry entry, Optional<Belief> usual) {
    Fields fields = Fields.of(entry, Section.BELIEF);
    Optional<Double> lifeHours =
        usual.isPresent()
            ? fields.find(Keys.LIFE_HOURS).or(() -> usual.map(Belief::lifeHours))
            : fields.need(Keys.LIFE_HOURS);
    double spread = value(fields, Keys.SPREAD, usual.map(Belief::spread));
    double shape = value(fields, Keys.SHAPE, usual.map(Belief::shape));
    double shapeSpread = value(fields, Keys.SHAPE_SPREAD, usual.map(Belief::shapeSpread));
    double halving = value(fields, Keys.HALVING, usual.map(Belief::halving));
    double halvingSpread = value(fields, Keys.HALVING_SPREAD, usual.map(Belief::halvingSpread));
    double at = value(fields, Keys.BELIEF_AT, usual.map(Belief::atCelsius));
    return lifeHours.map(
        hours -> new Belief(hours, spread, shape, shapeSpread, halving, halvingSpread, at));
  }

  private static double value(Fields fields, Key<Double> key, Optional<Double> usual) {
    return fields.find(key).or(() -> usual).orElseGet(key::defaultValue);
  }
}
