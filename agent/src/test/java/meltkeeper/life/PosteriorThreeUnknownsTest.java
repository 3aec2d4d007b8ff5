package meltkeeper.life;

import static meltkeeper.life.Lives.LINER;
import static meltkeeper.life.Lives.alive;
import static meltkeeper.life.Lives.at;
import static meltkeeper.life.Lives.failed;
import static meltkeeper.life.Near.relatively;
import static meltkeeper.life.PosteriorTwoUnknownsTest.moments;
import static meltkeeper.life.PosteriorTwoUnknownsTest.quantiles;
import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import meltkeeper.part.Belief;
import meltkeeper.part.Exposure;
import org.junit.jupiter.api.Test;

/**
 * Life, shape and halving interval. Values computed in R 4.2.2 on two dense grids that agree to
 * 1e-7. Tolerance: 1e-4 for means, standard deviations and probabilities, 1e-3 for quantiles.
 */
class PosteriorThreeUnknownsTest {

  private static final PartLife PRESENT = alive("L-100", at(220, 300).plus(at(237, 100)));

  private static List<PartLife> six(double... lastCelsius) {
    List<PartLife> failures =
        List.of(
            failed("L-1", at(220, 400).plus(at(237, 180))),
            failed("L-2", at(220, 655)),
            failed("L-3", at(220, 150).plus(at(237, 320))));
    List<PartLife> parts =
        new ArrayList<>(
            List.of(
                alive("L-4", at(220, 600)),
                alive("L-5", at(237, 310)),
                alive("L-6", at(220, 250).plus(at(245, 120)))));
    for (int i = 0; i < failures.size(); i++) {
      parts.add(
          lastCelsius.length == 0
              ? failures.get(i)
              : failures.get(i).withLastCelsius(lastCelsius[i]));
    }
    return parts;
  }

  @Test
  void meanRateAtFailure_posterior_referenceGrid() {
    Posterior posterior = Posterior.of(LINER, six());
    moments(posterior, 6.80180272, 0.167866029, 1.28156406, 0.367929223);
    halvingMoments(posterior, 13.3747723, 2.20128929);
    quantiles(posterior.lifeHours(), 699.771473, 888.082861, 1208.57320);
    quantiles(posterior.shape(), 1.95092010, 3.61950355, 6.54358850);
    quantiles(posterior.halving(), 9.94039956, 13.2690368, 17.1703259);
    Risk risk = new Risk(posterior);
    relatively(risk.ofPart(PRESENT, at(237, 24)).mean(), 0.0747264230, 1e-4);
    relatively(risk.ofUnseenPart(PRESENT, at(237, 24)), 0.0708120426, 1e-4);
    relatively(risk.meanOfPart(PRESENT, at(220, 24)), 0.0287838271, 1e-4);
    relatively(posterior.logEvidence(), -22.8102745, 1e-5);
  }

  @Test
  void rateOfTheLastHour_posterior_referenceGrid() {
    Posterior posterior = Posterior.of(LINER, six(237, 220, 237));
    moments(posterior, 6.81037947, 0.169854292, 1.27408392, 0.367720567);
    halvingMoments(posterior, 13.1674009, 2.19514072);
    quantiles(posterior.lifeHours(), 703.584466, 895.661009, 1223.17233);
    quantiles(posterior.shape(), 1.93685041, 3.59275116, 6.49188817);
    quantiles(posterior.halving(), 9.75073046, 13.0576447, 16.9590903);
    Risk risk = new Risk(posterior);
    relatively(risk.ofPart(PRESENT, at(237, 24)).mean(), 0.0751707080, 1e-4);
    relatively(risk.ofUnseenPart(PRESENT, at(237, 24)), 0.0712147698, 1e-4);
    relatively(risk.meanOfPart(PRESENT, at(220, 24)), 0.0285293435, 1e-4);
    relatively(posterior.logEvidence(), -22.0702577, 1e-5);
  }

  @Test
  void ageingRateAtFailure_left_out_wouldMoveTheHalvingInterval() {
    // 13.8088507 is the mean halving interval of a likelihood that drops dA/dt: a fault.
    double mean = Posterior.of(LINER, six()).halving().mean();
    assertThat(Math.abs(mean - 13.8088507)).isGreaterThan(0.4);
  }

  @Test
  void likelihood_atGivenParameters_referenceValues() {
    double[][] expected = {{10, -30.9474862, -30.0489278}, {7, -64.4007831, -63.2753428}};
    for (double[] row : expected) {
      relatively(logLikelihood(six(), row[0]), row[1], 1e-6);
      relatively(logLikelihood(six(237, 220, 237), row[0]), row[2], 1e-6);
    }
  }

  private static double logLikelihood(List<PartLife> parts, double halving) {
    return new LifeLikelihood(parts, Ageing.byHeatAlone(220, halving))
        .at(Math.log(2.5))
        .logLikelihood(Math.log(600));
  }

  @Test
  void classH_weakBelief_referenceGrid() {
    Belief belief = new Belief(3000, 1, 2.5, 0.4, 20, 10, 220);
    List<PartLife> parts = new ArrayList<>();
    for (Observation row : PublishedData.classH(celsius -> celsius)) {
      Observation.Failed failure = (Observation.Failed) row;
      parts.add(failed("H-" + parts.size(), at(failure.covariate(), failure.hours())));
    }
    Posterior posterior = Posterior.of(belief, parts);
    moments(posterior, 8.15608258, 0.0500559602, 1.23355489, 0.117421166);
    halvingMoments(posterior, 24.8110401, 1.35458626);
    quantiles(posterior.lifeHours(), 3209.24181, 3484.79194, 3782.25841);
    quantiles(posterior.halving(), 22.6658038, 24.7683979, 27.0989460);
    Risk risk = new Risk(posterior);
    PartLife present = alive("H-100", at(220, 1500));
    Exposure batch = at(240, 100);
    relatively(risk.ofPart(present, batch).mean(), 0.0256481830, 1e-4);
    relatively(risk.ofUnseenPart(present, batch), 0.0254762877, 1e-4);
  }

  private static void halvingMoments(Posterior posterior, double mean, double sd) {
    relatively(posterior.halving().mean(), mean, 1e-4);
    relatively(
        Math.sqrt(posterior.expectation(row -> Math.pow(row.ageing().halvingKelvin() - mean, 2))),
        sd,
        1e-4);
  }
}
