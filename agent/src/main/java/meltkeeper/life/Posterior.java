package meltkeeper.life;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.ToDoubleFunction;
import meltkeeper.part.Belief;
import org.hipparchus.special.Gamma;

/**
 * What is believed of the life of a kind of part once its parts have been looked at: a distribution
 * over log characteristic life, log shape and halving interval, by deterministic quadrature. The
 * order of the parts does not matter, to the last digit. Immutable.
 *
 * <p>Cost: about 1,300 nodes of shape and halving, times the parts, times one exponential. Where
 * parts were cleaned and ran on, the same once for each of some opinions on what a cleaning undoes.
 */
public final class Posterior {

  private final Belief belief;
  private final List<PartLife> parts;
  private final List<Component> components;
  private final List<Double> componentWeights;
  private final List<Row> rows;
  private final double[] rowWeights;
  private final double logEvidence;

  Posterior(Belief belief, List<PartLife> parts, List<Component> components, double[] logPriors) {
    this.belief = belief;
    this.parts = parts;
    this.components = List.copyOf(components);
    double[] logs = new double[logPriors.length];
    for (int i = 0; i < logs.length; i++) {
      logs[i] = logPriors[i] + components.get(i).logEvidence();
    }
    this.logEvidence = LogSum.of(logs);
    this.componentWeights = new ArrayList<>();
    this.rows = new ArrayList<>();
    List<Double> weights = new ArrayList<>();
    for (int i = 0; i < logs.length; i++) {
      double weight = Math.exp(logs[i] - logEvidence);
      componentWeights.add(weight);
      Component component = components.get(i);
      for (int r = 0; r < component.rows().size(); r++) {
        rows.add(component.rows().get(r));
        weights.add(weight * component.weights().get(r));
      }
    }
    this.rowWeights = weights.stream().mapToDouble(w -> w).toArray();
  }

  /** What these parts make of a belief. Part ids are unique. */
  public static Posterior of(Belief belief, List<PartLife> parts) {
    List<PartLife> sorted = sorted(parts);
    return CleaningOpinions.areTold(sorted)
        ? CleaningOpinions.posterior(belief, sorted)
        : of(belief, sorted, new Quadrature(belief, sorted, 0, 1).integrate());
  }

  static Posterior of(Belief belief, List<PartLife> parts, Component component) {
    return new Posterior(belief, parts, List.of(component), new double[1]);
  }

  static List<PartLife> sorted(List<PartLife> parts) {
    return parts.stream().sorted(Comparator.comparing(PartLife::id)).toList();
  }

  public Belief belief() {
    return belief;
  }

  /** The parts, in order of their ids. */
  public List<PartLife> parts() {
    return parts;
  }

  /** Failures of the parts; one that was made good and failed again counts twice. */
  public int failures() {
    return parts.stream().mapToInt(PartLife::failures).sum();
  }

  /** Natural log of the probability density of the data under the belief. */
  public double logEvidence() {
    return logEvidence;
  }

  List<Row> rows() {
    return rows;
  }

  double weight(int row) {
    return rowWeights[row];
  }

  List<Component> components() {
    return components;
  }

  double componentWeight(int component) {
    return componentWeights.get(component);
  }

  /** Characteristic life, reference hours. */
  public Estimate lifeHours() {
    return estimate(new LifeMeasure(row -> 0));
  }

  /** Mean life of a new part, reference hours. */
  public Estimate meanLifeHours() {
    return estimate(new LifeMeasure(row -> Gamma.logGamma(1 + 1 / row.shape())));
  }

  /** Share of new parts alive at an age, reference hours above 0. */
  public Estimate aliveAt(double hours) {
    return estimate(new SurvivalMeasure(hours));
  }

  /** The Weibull shape. */
  public Estimate shape() {
    List<Marginal> marginals = components.stream().map(Component::logShape).toList();
    return new Estimate(
        expectation(Row::shape),
        Math.exp(Marginal.quantile(marginals, componentWeights, 0.05)),
        Math.exp(Marginal.quantile(marginals, componentWeights, 0.5)),
        Math.exp(Marginal.quantile(marginals, componentWeights, 0.95)));
  }

  /** The halving interval, kelvin. */
  public Estimate halving() {
    List<Marginal> marginals = components.stream().map(Component::halving).toList();
    return new Estimate(
        expectation(row -> row.ageing().halvingKelvin()),
        Marginal.quantile(marginals, componentWeights, 0.05),
        Marginal.quantile(marginals, componentWeights, 0.5),
        Marginal.quantile(marginals, componentWeights, 0.95));
  }

  /** Mean of what depends on shape and ageing alone. */
  double expectation(ToDoubleFunction<Row> quantity) {
    double sum = 0;
    for (int r = 0; r < rowWeights.length; r++) {
      sum += rowWeights[r] * quantity.applyAsDouble(rows.get(r));
    }
    return sum;
  }

  /** Mean of what depends on life too. */
  double expectation(NodeQuantity quantity) {
    double sum = 0;
    for (int r = 0; r < rowWeights.length; r++) {
      Row row = rows.get(r);
      double inner = 0;
      for (int k = 0; k < row.size(); k++) {
        inner += row.share(k) * quantity.at(row, row.logLife(k));
      }
      sum += rowWeights[r] * inner;
    }
    return sum;
  }

  /** Something that depends on all unknowns. */
  @FunctionalInterface
  interface NodeQuantity {
    double at(Row row, double logLife);
  }

  Estimate estimate(Measure measure) {
    return new Spread(this, measure).estimate();
  }

  double mean(Measure measure) {
    return new Spread(this, measure).mean();
  }
}
