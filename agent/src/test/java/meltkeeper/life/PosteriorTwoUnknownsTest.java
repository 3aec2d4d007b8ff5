package meltkeeper.life;

import static meltkeeper.life.Lives.LINER;
import static meltkeeper.life.Lives.alive;
import static meltkeeper.life.Lives.at;
import static meltkeeper.life.Lives.failed;
import static meltkeeper.life.Near.relatively;

import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * Every hour at the reference temperature, so that only life and shape are unknown. Values computed
 * in R 4.2.2 on two dense grids that agree to 2e-8. Tolerance: 1e-4 for means, standard deviations
 * and probabilities, 1e-3 for quantiles.
 */
class PosteriorTwoUnknownsTest {

  private static final PartLife PRESENT = alive("L-100", at(220, 550));

  static final List<PartLife> SURVIVORS =
      List.of(alive("L-4", at(220, 600)), alive("L-5", at(220, 600)), alive("L-6", at(220, 310)));

  static final List<PartLife> SIX =
      List.of(
          failed("L-1", at(220, 580)),
          failed("L-2", at(220, 655)),
          failed("L-3", at(220, 490)),
          SURVIVORS.get(0),
          SURVIVORS.get(1),
          SURVIVORS.get(2));

  @Test
  void threeFailuresAndThreeSurvivors_posterior_referenceGrid() {
    Posterior posterior = Posterior.of(LINER, SIX);
    moments(posterior, 6.54122523, 0.159780506, 1.23334538, 0.359447268);
    relatively(posterior.lifeHours().mean(), 702.343270, 1e-4);
    relatively(posterior.shape().mean(), 3.66044610, 1e-4);
    quantiles(posterior.lifeHours(), 550.186811, 681.805992, 923.731521);
    quantiles(posterior.shape(), 1.89209034, 3.44157862, 6.17349314);
    relatively(posterior.logEvidence(), -21.6377285, 1e-5);
    Risk risk = new Risk(posterior);
    Estimate failure = risk.ofPart(PRESENT, at(220, 24));
    relatively(failure.mean(), 0.0777975213, 1e-4);
    quantiles(failure, 0.0275811299, 0.0691139497, 0.157751943);
    relatively(risk.ofUnseenPart(PRESENT, at(220, 24)), 0.0709788758, 1e-4);
    relatively(posterior.aliveAt(550).mean(), 0.619244067, 1e-4);
    relatively(covariance(posterior), -0.0105178503, 1e-4);
  }

  @Test
  void survivorsAlone_posterior_referenceGrid() {
    Posterior posterior = Posterior.of(LINER, SURVIVORS);
    moments(posterior, 6.73934550, 0.258638455, 1.01947225, 0.394901127);
    relatively(posterior.lifeHours().mean(), 874.389305, 1e-4);
    relatively(posterior.shape().mean(), 2.99581073, 1e-4);
    quantiles(posterior.lifeHours(), 565.353139, 834.639756, 1318.26638);
    quantiles(posterior.shape(), 1.44362535, 2.77626485, 5.29189506);
    relatively(posterior.logEvidence(), -1.67179222, 1e-4);
    Risk risk = new Risk(posterior);
    relatively(risk.ofPart(PRESENT, at(220, 24)).mean(), 0.0435798448, 1e-4);
    relatively(risk.ofUnseenPart(PRESENT, at(220, 24)), 0.0373431447, 1e-4);
    relatively(posterior.aliveAt(550).mean(), 0.707178833, 1e-4);
    relatively(covariance(posterior), 0.00693979764, 1e-4);
  }

  private static double covariance(Posterior p) {
    double u = p.expectation((row, logLife) -> logLife);
    double v = p.expectation(Row::logShape);
    return p.expectation((row, logLife) -> (logLife - u) * (row.logShape() - v));
  }

  static void moments(Posterior p, double life, double lifeSd, double shape, double shapeSd) {
    double u = p.expectation((row, logLife) -> logLife);
    double v = p.expectation(Row::logShape);
    relatively(u, life, 1e-4);
    relatively(v, shape, 1e-4);
    relatively(
        Math.sqrt(p.expectation((row, logLife) -> (logLife - u) * (logLife - u))), lifeSd, 1e-4);
    relatively(
        Math.sqrt(p.expectation(row -> (row.logShape() - v) * (row.logShape() - v))),
        shapeSd,
        1e-4);
  }

  static void quantiles(Estimate estimate, double p5, double p50, double p95) {
    relatively(estimate.p5(), p5, 1e-3);
    relatively(estimate.p50(), p50, 1e-3);
    relatively(estimate.p95(), p95, 1e-3);
  }
}
