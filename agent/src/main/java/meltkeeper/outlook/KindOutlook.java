package meltkeeper.outlook;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import meltkeeper.life.AgeReplacement;
import meltkeeper.life.KindLife;
import meltkeeper.life.PartLife;
import meltkeeper.life.Posterior;
import meltkeeper.life.ReplacementCosts;
import meltkeeper.life.VariantLife;
import meltkeeper.life.Variants;
import meltkeeper.part.Belief;
import meltkeeper.part.Costs;
import meltkeeper.part.Kind;
import meltkeeper.protocol.HotEnd;

/**
 * All that is known of a kind of part at one moment.
 *
 * @param lives of its parts, in order of ids
 * @param variants empty when no part names one
 * @param habits what the advice is measured against, the one that counts first
 * @param fitted parts that are on a hot end, in order of ids
 * @param notes on what the shop has not told
 */
record KindOutlook(
    Kind kind,
    List<PartLife> lives,
    ReplacementCosts costs,
    Posterior posterior,
    Optional<Variants> variants,
    List<Habit> habits,
    KindLife life,
    List<FittedOutlook> fitted,
    List<String> notes) {

  /** For a kind of which the owner believes nothing: 600 h, a factor of five either way. */
  private static final Belief VAGUE =
      new Belief(600, 1, 2, Belief.DEFAULT_SHAPE_SPREAD, 10, Belief.DEFAULT_HALVING_SPREAD, 220);

  private static final Costs FREE = new Costs("", 0, 0);

  /**
   * What the parts of a kind make of its belief.
   *
   * @param duties of the hot ends that parts of it are on
   */
  static KindOutlook of(
      Kind kind,
      Optional<Costs> shopCosts,
      List<PartLives.Told> parts,
      Map<HotEnd, Duty> duties,
      long nowNanos) {
    List<PartLife> lives = parts.stream().map(PartLives.Told::life).toList();
    Posterior posterior = Posterior.of(kind.belief().orElse(VAGUE), lives);
    ReplacementCosts costs = ReplacementCosts.of(kind, shopCosts.orElse(FREE));
    List<Habit> habits = Habit.of(kind, lives, List.copyOf(duties.values()));
    KindLife life = KindLife.of(posterior, costs, habits.stream().map(Habit::calendar).findFirst());
    Optional<Variants> variants = Variants.of(posterior.belief(), lives);
    Map<String, Posterior> byVariant = new java.util.HashMap<>();
    Map<String, OptionalDouble> replaceAt = new java.util.HashMap<>();
    for (VariantLife variant : variants.map(Variants::variants).orElse(List.of())) {
      byVariant.put(variant.variant(), variant.posterior());
      replaceAt.put(
          variant.variant(), AgeReplacement.of(variant.posterior(), costs).cheapest().at());
    }
    List<FittedOutlook> fitted = new ArrayList<>();
    for (PartLives.Told told : parts) {
      Function<HotEnd, FittedOutlook> outlook =
          hotEnd ->
              FittedOutlook.of(
                  told.life(),
                  kind.name(),
                  hotEnd,
                  told.life().variant().map(byVariant::get).orElse(posterior),
                  told.life().variant().map(replaceAt::get).orElse(life.advice().replaceAt()),
                  duties.getOrDefault(hotEnd, Duty.UNKNOWN),
                  nowNanos);
      told.part().fittedOn().map(outlook).ifPresent(fitted::add);
    }
    return new KindOutlook(
        kind, lives, costs, posterior, variants, habits, life, fitted, notes(kind, shopCosts));
  }

  private static List<String> notes(Kind kind, Optional<Costs> costs) {
    List<String> notes = new ArrayList<>();
    if (kind.belief().isEmpty()) {
      notes.add(
          "the configuration states no belief for "
              + kind.name()
              + ": 600 h at 220 °C, a factor of five either way, is assumed; state one under"
              + " kinds: "
              + kind.name()
              + ": belief:");
    }
    if (costs.isEmpty()) {
      notes.add(
          "the configuration names no costs, so that a jam costs nothing: no swap in good time can"
              + " pay; name them under costs:");
    }
    return notes;
  }
}
