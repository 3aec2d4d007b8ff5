package meltkeeper.outlook;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import meltkeeper.life.AgeReplacement;
import meltkeeper.life.DueIn;
import meltkeeper.life.Estimate;

/**
 * What there is to plot of a kind. Ages are reference hours.
 *
 * @param ages where the curves are told, rising, above 0
 * @param alive share of new parts alive at each age
 * @param costPer1000Hours of replacing at each age; empty when a planned swap costs nothing
 * @param replaceAt the advised age; empty when waiting is cheapest
 * @param ticks the shop's own parts
 */
public record KindCurves(
    double referenceTemperature,
    List<Double> ages,
    List<Estimate> alive,
    List<Double> costPer1000Hours,
    OptionalDouble replaceAt,
    List<Tick> ticks) {

  private static final int POINTS = 60;

  /** Below this share of new parts alive there is little to see. */
  private static final double FEW = 0.02;

  /** A part at its present or last age. */
  public record Tick(String id, double ageHours, boolean failed) {}

  static KindCurves of(KindOutlook kind) {
    List<Tick> ticks =
        kind.lives().stream()
            .map(
                life ->
                    new Tick(life.id(), DueIn.age(kind.posterior(), life).p50(), life.hasFailed()))
            .toList();
    double oldest = ticks.stream().mapToDouble(Tick::ageHours).max().orElse(0);
    double longest = kind.life().lifeHours().p50();
    while (kind.posterior().aliveAt(longest).mean() > FEW) {
      longest *= 1.25;
    }
    double end = Math.max(longest, 1.05 * oldest);
    AgeReplacement replacement = AgeReplacement.of(kind.posterior(), kind.costs());
    List<Double> ages = new ArrayList<>();
    List<Estimate> alive = new ArrayList<>();
    List<Double> costs = new ArrayList<>();
    for (int i = 1; i <= POINTS; i++) {
      double age = end * i / POINTS;
      ages.add(age);
      alive.add(kind.posterior().aliveAt(age));
      if (kind.costs().planned() > 0) {
        costs.add(1000 * replacement.costPerHour(age));
      }
    }
    return new KindCurves(
        kind.life().referenceTemperature(),
        ages,
        alive,
        costs,
        kind.life().advice().replaceAt(),
        ticks);
  }
}
