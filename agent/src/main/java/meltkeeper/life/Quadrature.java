package meltkeeper.life;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import meltkeeper.part.Belief;
import org.hipparchus.analysis.integration.gauss.GaussIntegrator;
import org.hipparchus.analysis.integration.gauss.GaussIntegratorFactory;

/**
 * Integrates the posterior over its three unknowns. At a given shape and halving interval the
 * likelihood in log life has a closed form, so parts are summed once for each such pair: the cost
 * is nodes of shape × nodes of halving × parts, whatever the nodes of life. Shape and halving have
 * Gauss-Legendre nodes in the {@link Box} that matters; life has a {@link Row} of its own at each.
 */
final class Quadrature {

  private static final int NODES = 36;

  private final Belief belief;
  private final Prior prior;
  private final List<PartLife> parts;
  private final double cleaningShift;
  private final double idleFactor;

  Quadrature(Belief belief, List<PartLife> parts, double cleaningShift, double idleFactor) {
    this.belief = belief;
    this.prior = new Prior(belief);
    this.parts = parts;
    this.cleaningShift = cleaningShift;
    this.idleFactor = idleFactor;
  }

  Component integrate() {
    Map<Double, LifeLikelihood> byHalving = new HashMap<>();
    Box box =
        Box.of(belief)
            .around(
                (logShape, halving) ->
                    roughly(
                        byHalving.computeIfAbsent(
                            halving, h -> new LifeLikelihood(parts, ageing(h))),
                        logShape,
                        halving));
    GaussIntegrator shapes = rule(box.shapeLow(), box.shapeHigh());
    GaussIntegrator halvings = rule(box.halvingLow(), box.halvingHigh());
    List<Row> rows = new ArrayList<>();
    double[][] logs = new double[NODES][NODES];
    for (int j = 0; j < NODES; j++) {
      double halving = halvings.getPoint(j);
      Ageing ageing = ageing(halving);
      LifeLikelihood likelihood = new LifeLikelihood(parts, ageing);
      for (int i = 0; i < NODES; i++) {
        double logShape = shapes.getPoint(i);
        LifeLikelihood.Section section = likelihood.at(logShape);
        Row row =
            Row.around(
                logShape,
                ageing,
                RowPeak.of(prior.logLifeMean(), belief.spread(), section),
                u -> section.logLikelihood(u) + prior.ofLogLife(u));
        logs[i][j] = row.logMass() + prior.ofLogShape(logShape) + prior.ofHalving(halving);
        rows.add(row);
      }
    }
    return component(box, shapes, halvings, rows, logs);
  }

  private Component component(
      Box box, GaussIntegrator shapes, GaussIntegrator halvings, List<Row> rows, double[][] logs) {
    double[] alongShape = new double[NODES];
    double[] alongHalving = new double[NODES];
    double[] rowLogs = new double[NODES * NODES];
    for (int i = 0; i < NODES; i++) {
      double[] overHalving = new double[NODES];
      double[] overShape = new double[NODES];
      for (int j = 0; j < NODES; j++) {
        overHalving[j] = logs[i][j] + Math.log(halvings.getWeight(j));
        overShape[j] = logs[j][i] + Math.log(shapes.getWeight(j));
        rowLogs[j * NODES + i] = overHalving[j] + Math.log(shapes.getWeight(i));
      }
      alongShape[i] = LogSum.of(overHalving);
      alongHalving[i] = LogSum.of(overShape);
    }
    return Component.of(
        LogSum.of(rowLogs),
        marginal(shapes, alongShape, box.shapeLow(), box.shapeHigh()),
        marginal(halvings, alongHalving, box.halvingLow(), box.halvingHigh()),
        rows,
        rowLogs);
  }

  private Ageing ageing(double halving) {
    return new Ageing(belief.atCelsius(), halving, cleaningShift, idleFactor);
  }

  private static GaussIntegrator rule(double low, double high) {
    return new GaussIntegratorFactory().legendre(NODES, low, high);
  }

  private double roughly(LifeLikelihood likelihood, double logShape, double halving) {
    LifeLikelihood.Section section = likelihood.at(logShape);
    RowPeak peak = RowPeak.of(prior.logLifeMean(), belief.spread(), section);
    return section.logLikelihood(peak.logLife())
        + prior.ofLogLife(peak.logLife())
        + Math.log(peak.spread())
        + prior.ofLogShape(logShape)
        + prior.ofHalving(halving);
  }

  /** The nodes of the rule, and the ends of the box by straight continuation. */
  private static Marginal marginal(
      GaussIntegrator rule, double[] logDensity, double low, double high) {
    double[] points = new double[NODES + 2];
    double[] logs = new double[NODES + 2];
    for (int i = 0; i < NODES; i++) {
      points[i + 1] = rule.getPoint(i);
      logs[i + 1] = logDensity[i];
    }
    points[0] = low;
    points[NODES + 1] = high;
    logs[0] = continued(points, logs, 0, 1, 2);
    logs[NODES + 1] = continued(points, logs, NODES + 1, NODES, NODES - 1);
    return new Marginal(points, logs);
  }

  private static double continued(double[] x, double[] y, int at, int near, int far) {
    return y[near] + (y[near] - y[far]) / (x[near] - x[far]) * (x[at] - x[near]);
  }
}
