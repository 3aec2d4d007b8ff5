package meltkeeper.life;

import java.util.ArrayList;
import java.util.List;
import meltkeeper.part.Belief;
import org.hipparchus.analysis.integration.gauss.GaussIntegrator;
import org.hipparchus.analysis.integration.gauss.GaussIntegratorFactory;

/** Integrates the pooled model of {@link Variants} at one spread of the variants after another. */
final class VariantQuadrature {

  private static final int NODES = 16;

  private final Prior prior;
  private final List<List<PartLife>> groups;
  private final GaussIntegrator shapes;
  private final GaussIntegrator halvings;
  private final List<List<LifeLikelihood.Section>> sections = new ArrayList<>();
  private final List<Ageing> ageings = new ArrayList<>();
  private final Belief belief;

  /** The parts without a variant, and those of each variant. */
  VariantQuadrature(Belief belief, List<PartLife> plain, List<List<PartLife>> groups) {
    this.belief = belief;
    this.prior = new Prior(belief);
    this.groups = groups;
    List<List<PartLife>> all = new ArrayList<>(groups);
    all.add(plain);
    Box together = new VariantBox(belief, List.of(flat(all))).found();
    Box box = together.and(new VariantBox(belief, all).found());
    shapes = new GaussIntegratorFactory().legendre(NODES, box.shapeLow(), box.shapeHigh());
    halvings = new GaussIntegratorFactory().legendre(NODES, box.halvingLow(), box.halvingHigh());
    for (int j = 0; j < NODES; j++) {
      Ageing ageing = Ageing.byHeatAlone(belief.atCelsius(), halvings.getPoint(j));
      ageings.add(ageing);
      List<LifeLikelihood> likelihoods =
          all.stream().map(parts -> new LifeLikelihood(parts, ageing)).toList();
      for (int i = 0; i < NODES; i++) {
        double logShape = shapes.getPoint(i);
        sections.add(likelihoods.stream().map(l -> l.at(logShape)).toList());
      }
    }
  }

  private static List<PartLife> flat(List<List<PartLife>> groups) {
    return groups.stream().flatMap(List::stream).toList();
  }

  /**
   * The posterior at one spread.
   *
   * @param components one for each variant
   * @param longer probability that each variant lasts longer than its kind
   */
  record AtSpread(double logEvidence, List<Component> components, List<Double> longer) {

    Component component(int group) {
      return components.get(group);
    }

    double probabilityLonger(int group) {
      return longer.get(group);
    }
  }

  AtSpread integrate(double spread) {
    List<VariantLattice> lattices = new ArrayList<>();
    double[] logs = new double[NODES * NODES];
    double[] alongShape = new double[NODES];
    double[] alongHalving = new double[NODES];
    double[][] grid = new double[NODES][NODES];
    for (int j = 0; j < NODES; j++) {
      for (int i = 0; i < NODES; i++) {
        int at = j * NODES + i;
        VariantLattice lattice =
            new VariantLattice(prior, belief.spread(), spread, sections.get(at));
        lattices.add(lattice);
        grid[i][j] =
            lattice.logMass()
                + prior.ofLogShape(shapes.getPoint(i))
                + prior.ofHalving(halvings.getPoint(j));
        logs[at] = grid[i][j] + Math.log(shapes.getWeight(i)) + Math.log(halvings.getWeight(j));
      }
    }
    double all = LogSum.of(logs);
    for (int i = 0; i < NODES; i++) {
      double[] overHalving = new double[NODES];
      double[] overShape = new double[NODES];
      for (int j = 0; j < NODES; j++) {
        overHalving[j] = grid[i][j] + Math.log(halvings.getWeight(j));
        overShape[j] = grid[j][i] + Math.log(shapes.getWeight(j));
      }
      alongShape[i] = LogSum.of(overHalving);
      alongHalving[i] = LogSum.of(overShape);
    }
    Marginal logShape = new Marginal(points(shapes), alongShape);
    Marginal halving = new Marginal(points(halvings), alongHalving);
    List<Component> components = new ArrayList<>();
    List<Double> longer = new ArrayList<>();
    for (int g = 0; g < groups.size(); g++) {
      List<Row> rows = new ArrayList<>();
      double above = 0;
      for (int at = 0; at < logs.length; at++) {
        VariantLattice lattice = lattices.get(at);
        rows.add(lattice.row(g, shapes.getPoint(at % NODES), ageings.get(at / NODES)));
        above += Math.exp(logs[at] - all) * lattice.probabilityLonger(g);
      }
      components.add(Component.of(all, logShape, halving, rows, logs));
      longer.add(above);
    }
    return new AtSpread(all, components, longer);
  }

  private static double[] points(GaussIntegrator rule) {
    double[] points = new double[rule.getNumberOfPoints()];
    for (int i = 0; i < points.length; i++) {
      points[i] = rule.getPoint(i);
    }
    return points;
  }
}
