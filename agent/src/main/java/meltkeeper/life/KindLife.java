package meltkeeper.life;

import java.util.List;
import java.util.Optional;

/**
 * What a shop's data say of one kind of part. Hours are reference hours.
 *
 * @param referenceTemperature °C
 * @param parts how many were looked at
 * @param failures how many of them failed
 * @param lifeHours characteristic life: 63 % have failed by then
 * @param meanLifeHours mean life of a new part
 * @param shape of the Weibull distribution: above 1, parts wear
 * @param halving interval in which life halves, kelvin
 * @param believed the same four before any part spoke
 * @param learned how much of what is known comes from the data
 * @param advice when to replace
 * @param notes what to bear in mind, in plain words
 */
public record KindLife(
    double referenceTemperature,
    int parts,
    int failures,
    Estimate lifeHours,
    Estimate meanLifeHours,
    Estimate shape,
    Estimate halving,
    Believed believed,
    Learned learned,
    Advice advice,
    List<String> notes) {

  public KindLife {
    notes = List.copyOf(notes);
  }

  /** The belief in the same terms. */
  public record Believed(
      Estimate lifeHours, Estimate meanLifeHours, Estimate shape, Estimate halving) {

    static Believed of(Posterior prior) {
      return new Believed(prior.lifeHours(), prior.meanLifeHours(), prior.shape(), prior.halving());
    }
  }

  /**
   * The answer.
   *
   * @param habit what the saving is measured against
   */
  public static KindLife of(
      Posterior posterior, ReplacementCosts costs, Optional<CalendarHabit> habit) {
    Posterior prior = Posterior.of(posterior.belief(), List.of());
    Learned learned = Learned.between(prior, posterior);
    return new KindLife(
        posterior.belief().atCelsius(),
        posterior.parts().size(),
        posterior.failures(),
        posterior.lifeHours(),
        posterior.meanLifeHours(),
        posterior.shape(),
        posterior.halving(),
        Believed.of(prior),
        learned,
        Advice.of(posterior, costs, habit),
        Notes.on(posterior, learned));
  }
}
