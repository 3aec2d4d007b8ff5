package meltkeeper.outlook;

import java.util.Optional;
import java.util.OptionalDouble;
import meltkeeper.life.DueIn;
import meltkeeper.life.Estimate;
import meltkeeper.life.PartLife;
import meltkeeper.life.Posterior;
import meltkeeper.life.Risk;
import meltkeeper.part.Exposure;
import meltkeeper.protocol.HotEnd;

/**
 * What lies ahead of a part that is on a hot end now.
 *
 * @param kind name of its kind
 * @param posterior what is believed of its kind, or of its variant
 * @param replaceAt advised age, reference hours; empty when waiting is cheapest
 * @param ageHours reference hours
 * @param duty of its hot end
 * @param due empty when waiting is cheapest, or the hot end was not hot for four weeks
 * @param within24Hours probability that it fails within 24 h by the clock at the present duty;
 *     empty while the duty is not known
 * @param within7Days the same for 7 days
 */
public record FittedOutlook(
    PartLife life,
    String kind,
    HotEnd hotEnd,
    Posterior posterior,
    OptionalDouble replaceAt,
    Estimate ageHours,
    Duty duty,
    Optional<Due> due,
    OptionalDouble within24Hours,
    OptionalDouble within7Days) {

  static FittedOutlook of(
      PartLife life,
      String kind,
      HotEnd hotEnd,
      Posterior posterior,
      OptionalDouble replaceAt,
      Duty duty,
      long nowNanos) {
    Risk risk = new Risk(posterior);
    return new FittedOutlook(
        life,
        kind,
        hotEnd,
        posterior,
        replaceAt,
        DueIn.age(posterior, life),
        duty,
        replaceAt.isEmpty() || duty.isIdle()
            ? Optional.empty()
            : Optional.of(
                Due.of(
                    DueIn.hours(posterior, life, replaceAt.getAsDouble(), duty.perHour()),
                    duty,
                    nowNanos)),
        within(risk, life, duty, 1),
        within(risk, life, duty, 7));
  }

  private static OptionalDouble within(Risk risk, PartLife life, Duty duty, int days) {
    return duty.isIdle()
        ? OptionalDouble.empty()
        : OptionalDouble.of(risk.meanOfPart(life, duty.ofDays(days)));
  }

  /** The part's id. */
  public String id() {
    return life.id();
  }

  /** Hot time over its whole life in view. */
  Exposure hot() {
    Exposure hot = Exposure.NONE;
    for (var spell : life.spells()) {
      hot = hot.plus(spell.hot());
    }
    return hot;
  }
}
