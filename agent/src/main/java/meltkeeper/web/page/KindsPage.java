package meltkeeper.web.page;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import meltkeeper.outlook.KindCurves;
import meltkeeper.outlook.LifeAnswer;
import meltkeeper.outlook.LifeQuestion;
import meltkeeper.web.view.AgentView;

/** What the shop's data say of each kind of part. */
public record KindsPage(List<OfKind> kinds, String currency) {

  /**
   * One kind.
   *
   * @param survival a plot with the shop's own parts on it; empty while there are none
   * @param cost a plot of cost against age; empty where a planned swap costs nothing
   */
  public record OfKind(
      String name, LifeAnswer.OfKind life, Optional<String> survival, Optional<String> cost) {

    /** The advice in one sentence. */
    public String headline(Frame frame) {
      OptionalDouble age = life.advice().replaceAt();
      return age.isPresent()
          ? frame.say("kinds.replace-at", frame.whole(age.getAsDouble()))
          : frame.say("kinds.wait");
    }

    /** Why. */
    public String because() {
      return Sentence.of(life.advice().because());
    }

    private boolean isUnused() {
      return life.parts() == 0;
    }
  }

  /** When to replace, and what that costs, in words. */
  public String replacement(OfKind kind, Frame frame) {
    LifeAnswer.Advice advice = kind.life().advice();
    String cost = money(advice.costPer1000Hours());
    return advice.replaceAt().isPresent()
        ? frame.say(
            "kinds.replace-words", frame.whole(advice.replaceAt().getAsDouble()), cost, currency)
        : frame.say("kinds.waits", cost, currency);
  }

  /** Whether cleaning pays, in words. */
  public String cleaning(LifeAnswer.OfCleaning cleaning, Frame frame) {
    String clean = money(cleaning.costPer1000Hours());
    String fresh = money(cleaning.buyNewCostPer1000Hours());
    return cleaning.pays() && cleaning.at().isPresent()
        ? frame.say(
            "kinds.cleaning-pays",
            frame.whole(cleaning.at().getAsDouble()),
            cleaning.times(),
            clean,
            fresh,
            currency)
        : frame.say("kinds.cleaning-not", clean, fresh, currency);
  }

  private static String money(double amount) {
    return String.format(Locale.ROOT, "%.2f", amount);
  }

  static KindsPage of(AgentView agent) {
    LifeAnswer life = agent.outlook().life(LifeQuestion.USUAL, agent.nowNanos());
    Map<String, KindCurves> curves = agent.outlook().curves(agent.nowNanos());
    List<OfKind> kinds = new ArrayList<>();
    life.kinds()
        .forEach(
            (name, kind) -> {
              Optional<KindCurves> drawn = Optional.ofNullable(curves.get(name));
              kinds.add(
                  new OfKind(
                      name,
                      kind,
                      drawn.map(c -> LifePlots.survival(name, c)),
                      drawn
                          .filter(c -> !c.costPer1000Hours().isEmpty())
                          .map(c -> LifePlots.cost(name, c, life.currency()))));
            });
    kinds.sort(Comparator.comparing(OfKind::isUnused));
    return new KindsPage(kinds, life.currency());
  }
}
