package meltkeeper.life;

import meltkeeper.part.Exposure;
import org.hipparchus.analysis.integration.gauss.GaussIntegrator;
import org.hipparchus.analysis.integration.gauss.GaussIntegratorFactory;

/**
 * Whether to swap a part before a batch.
 *
 * @param fitted P(the fitted part fails in the batch)
 * @param fresh P(a new one does)
 * @param saving money that swapping first is expected to save; below 0 when it is better to wait
 */
public record SwapFirst(Estimate fitted, Estimate fresh, double saving) {

  private static final GaussIntegrator ALONG = new GaussIntegratorFactory().legendre(8, 0, 1);

  /**
   * Running on costs the risk of a jam, and gains the hours until that jam or the end of the batch,
   * worth the long-run rate of the best rule; what follows is the same either way. So swapping
   * first saves penalty · P(fails) − rate · E[hours run]. At the advised age the two are equal for
   * a short batch, as they must be.
   */
  public static SwapFirst of(
      Posterior posterior, PartLife part, Exposure batch, ReplacementCosts costs) {
    Risk risk = new Risk(posterior);
    Estimate fitted = risk.ofPart(part, batch);
    double hours = posterior.expectation(row -> row.ageing().hours(batch));
    double run = 0;
    for (int i = 0; i < ALONG.getNumberOfPoints(); i++) {
      run += ALONG.getWeight(i) * (1 - risk.riskOf(part, batch, ALONG.getPoint(i)));
    }
    double longRun = AgeReplacement.of(posterior, costs).cheapest().costPerHour();
    return new SwapFirst(
        fitted, risk.ofNewPart(batch), costs.penalty() * fitted.mean() - longRun * hours * run);
  }
}
