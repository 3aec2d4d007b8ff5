package meltkeeper.outlook;

import com.fasterxml.jackson.annotation.JsonProperty;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import meltkeeper.life.Estimate;
import meltkeeper.life.HotIdle;
import meltkeeper.life.KindLife;
import meltkeeper.life.Learned;

/**
 * How long parts last, and what follows from it.
 *
 * @param zone in which it is shown
 * @param currency of all costs
 * @param kinds by name
 */
public record LifeAnswer(String zone, String currency, Map<String, OfKind> kinds) {

  /**
   * One kind. Hours are reference hours.
   *
   * @param referenceTemperature °C
   * @param parts that were looked at
   * @param failures of theirs
   * @param lifeHours characteristic life: 63 % have failed by then
   * @param meanLifeHours mean life of a new part
   * @param shape of the Weibull distribution
   * @param halving interval, kelvin
   * @param believed the same four before any part spoke
   * @param learned share of what is known that comes from the shop's own parts, 0 to 1
   * @param fitted parts on hot ends, the one due first at the top
   * @param variants empty when no part names one
   * @param hotIdle empty when no hour was idle
   * @param cleaning empty when nothing is known of cleaning
   * @param notes what to bear in mind, in plain words
   * @param explained only when asked for
   */
  public record OfKind(
      double referenceTemperature,
      int parts,
      int failures,
      Estimate lifeHours,
      Estimate meanLifeHours,
      Estimate shape,
      Estimate halving,
      KindLife.Believed believed,
      Learned learned,
      Advice advice,
      List<Fitted> fitted,
      Optional<OfVariants> variants,
      Optional<HotIdle> hotIdle,
      Optional<OfCleaning> cleaning,
      OfSpares spares,
      List<String> notes,
      Optional<Explained> explained) {}

  /**
   * When to replace.
   *
   * @param replaceAt empty when waiting for the failure is cheapest
   * @param savingPer1000Hours against the habit that counts; empty where there is none
   * @param against that habit, and others
   * @param because the reason in plain words
   */
  public record Advice(
      OptionalDouble replaceAt,
      @JsonProperty("cost_per_1000_hours") double costPer1000Hours,
      @JsonProperty("saving_per_1000_hours") OptionalDouble savingPer1000Hours,
      List<Against> against,
      String because) {}

  /** A habit, the age that it replaces at, and what the advice saves against it. */
  public record Against(
      String habit,
      double hours,
      @JsonProperty("cost_per_1000_hours") double costPer1000Hours,
      @JsonProperty("saving_per_1000_hours") double savingPer1000Hours) {}

  /**
   * A part on a hot end.
   *
   * @param ageHours reference hours
   * @param lifeUsed share of the advised age; empty when waiting is cheapest
   * @param due empty when waiting is cheapest, or the duty is not known
   * @param failsWithin24Hours probability by the clock at the present duty
   */
  public record Fitted(
      String id,
      String printer,
      int hotEnd,
      Estimate ageHours,
      OptionalDouble lifeUsed,
      Optional<Due> due,
      @JsonProperty("fails_within_24_hours") OptionalDouble failsWithin24Hours,
      @JsonProperty("fails_within_7_days") OptionalDouble failsWithin7Days) {}

  /**
   * Variants of the kind.
   *
   * @param probabilityDifferent that they differ by more than a tenth in life
   * @param believedDifferent the same before any part spoke
   */
  public record OfVariants(
      double probabilityDifferent, double believedDifferent, List<OfVariant> variants) {}

  /** One variant, and the probability that it lasts longer than its kind. */
  public record OfVariant(
      String variant,
      int parts,
      int failures,
      Estimate lifeHours,
      OptionalDouble replaceAt,
      double probabilityLonger) {}

  /**
   * Whether cleaning pays.
   *
   * @param restores share of its age that a cleaning undoes
   * @param times how often to clean before replacing; 0 when buying new is cheapest
   * @param at the age to clean at
   */
  public record OfCleaning(
      boolean pays,
      Estimate restores,
      int times,
      OptionalDouble at,
      @JsonProperty("cost_per_1000_hours") double costPer1000Hours,
      @JsonProperty("buy_new_cost_per_1000_hours") double buyNewCostPer1000Hours) {}

  /** How many to keep for so many days at that confidence, for so many hot ends at work. */
  public record OfSpares(int days, double confidence, int hotEnds, double expected, int keep) {}

  /**
   * What is behind the answer.
   *
   * @param logEvidence log of the probability density of the data under the belief
   * @param expectedFailures that the model would have had among these parts
   * @param lives each part's data
   */
  public record Explained(
      String model, double logEvidence, double expectedFailures, List<OfPart> lives) {}

  /**
   * One part's data.
   *
   * @param hotHours by the clock, in view
   * @param lastCelsius of its last hot hour, where it failed and the ledger knows
   * @param failedAmong shares of parts that the model expects to have failed by each failure of it
   */
  public record OfPart(
      String id,
      String ending,
      double hotHours,
      double ageHours,
      int cleanings,
      OptionalDouble lastCelsius,
      List<Double> failedAmong) {}
}
