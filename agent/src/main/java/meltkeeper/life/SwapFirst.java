package meltkeeper.life;

import meltkeeper.part.Exposure;

/**
 * Whether to swap a part before a batch.
 *
 * @param fitted P(the fitted part fails in the batch)
 * @param fresh P(a new one does)
 * @param saving money that swapping first is expected to save; below 0 when it is better to wait
 */
public record SwapFirst(Estimate fitted, Estimate fresh, double saving) {

  /**
   * Running on costs the risk of a jam; swapping first costs the hours of the batch at the long-run
   * rate of the best rule. At the advised age the two are equal, as they must be.
   */
  public static SwapFirst of(
      Posterior posterior, PartLife part, Exposure batch, ReplacementCosts costs) {
    Risk risk = new Risk(posterior);
    Estimate fitted = risk.ofPart(part, batch);
    double hours = posterior.expectation(row -> row.ageing().hours(batch));
    double longRun = AgeReplacement.of(posterior, costs).cheapest().costPerHour();
    return new SwapFirst(
        fitted, risk.ofNewPart(batch), costs.penalty() * fitted.mean() - longRun * hours);
  }
}
