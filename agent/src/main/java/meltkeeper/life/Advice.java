package meltkeeper.life;

import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * When to replace a kind of part.
 *
 * @param replaceAt age in reference hours; empty when waiting for the failure is cheapest
 * @param costPer1000Hours what following it costs, per 1,000 reference hours
 * @param savingPer1000Hours against the shop's habit; empty where it has none
 * @param because the reason in plain words
 */
public record Advice(
    OptionalDouble replaceAt,
    double costPer1000Hours,
    OptionalDouble savingPer1000Hours,
    String because) {

  static Advice of(Posterior posterior, ReplacementCosts costs, Optional<CalendarHabit> habit) {
    AgeReplacement replacement = AgeReplacement.of(posterior, costs);
    if (!(costs.planned() > 0)) {
      return new Advice(
          OptionalDouble.empty(),
          1000 * replacement.waitingPerHour(),
          OptionalDouble.empty(),
          "by the configuration a swap in good time costs nothing, so that no age can be called"
              + " cheapest: state price, swap-minutes and labour-per-hour");
    }
    AgeReplacement.Cheapest cheapest = replacement.cheapest();
    OptionalDouble saving =
        habit
            .map(
                h ->
                    OptionalDouble.of(
                        1000 * (h.costPerHour(posterior, costs) - cheapest.costPerHour())))
            .orElse(OptionalDouble.empty());
    return new Advice(
        cheapest.at(), 1000 * cheapest.costPerHour(), saving, because(posterior, costs, cheapest));
  }

  private static String because(
      Posterior posterior, ReplacementCosts costs, AgeReplacement.Cheapest cheapest) {
    if (cheapest.at().isPresent()) {
      double share = 1 - cheapest.costPerHour() / cheapest.waitingPerHour();
      return String.format(
          Locale.ROOT,
          "a swap in good time costs %.2f, a failure %.2f; waiting for failures would cost %.0f %%"
              + " more",
          costs.planned(),
          costs.failure(),
          100 * share / (1 - share));
    }
    if (!(costs.penalty() > 0)) {
      return "a failure costs no more than a swap in good time: waiting is cheapest";
    }
    return posterior.shape().mean() <= 1.2
        ? "these parts fail by chance rather than by age: waiting is cheapest"
        : "a failure costs too little more than a swap in good time: waiting is cheapest";
  }
}
