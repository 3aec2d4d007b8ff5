package meltkeeper.outlook;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import meltkeeper.life.Estimate;

/**
 * Whether a batch gets through.
 *
 * @param hours the batch takes
 * @param parts on the printer's hot ends
 * @param any probability that at least one of them fails during the batch
 * @param atMost the risk that was asked for
 * @param longestHours the longest batch of that make that stays under it; empty when none was asked
 *     for, or no length reaches it
 * @param advice in plain words
 * @param cautions that apply
 * @param notes on how it was reckoned
 */
public record RiskAnswer(
    String printer,
    double hours,
    List<OfPart> parts,
    double any,
    Optional<Double> atMost,
    OptionalDouble longestHours,
    String advice,
    List<String> cautions,
    List<String> notes) {

  /**
   * One part.
   *
   * @param ageHours reference hours now
   * @param failureProbability within the batch
   * @param newPartProbability that a new part would fail in it
   * @param savingBySwapping money that swapping it first is expected to save; below 0 when it is
   *     better to run it on
   */
  public record OfPart(
      String id,
      String kind,
      int hotEnd,
      double ageHours,
      Estimate failureProbability,
      double newPartProbability,
      double savingBySwapping) {}
}
