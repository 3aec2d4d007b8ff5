package meltkeeper.outlook;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import meltkeeper.life.Risk;
import meltkeeper.life.SwapFirst;
import meltkeeper.part.Costs;

/** Answers for a batch. */
record RiskDesk(Outlook outlook, Optional<Costs> costs) {

  /** Common practice, no source: a liner of PTFE should not see more for long. */
  private static final double LINER_LIMIT_CELSIUS = 250;

  private static final String LINER = "liner";

  /** A risk below this is not worth a swap in words. */
  private static final double SMALL = 0.001;

  RiskAnswer answer(RiskQuestion question) {
    List<FittedOutlook> fitted =
        outlook.fitted().stream()
            .filter(part -> part.hotEnd().printer().equals(question.printer()))
            .toList();
    List<RiskAnswer.OfPart> parts =
        fitted.stream().map(part -> risk(part, question.batch())).toList();
    double any = Risk.ofAny(parts.stream().map(p -> p.failureProbability().mean()).toList());
    OptionalDouble longest =
        question
            .atMost()
            .filter(limit -> !fitted.isEmpty())
            .map(limit -> longest(fitted, question.batch(), limit))
            .orElse(OptionalDouble.empty());
    return new RiskAnswer(
        question.printer(),
        question.batch().hours(),
        parts,
        any,
        question.atMost(),
        longest,
        advice(question, parts, any, longest),
        cautions(question.batch(), fitted),
        question.batch().notes());
  }

  private RiskAnswer.OfPart risk(FittedOutlook part, Batch batch) {
    KindOutlook kind = kind(part);
    SwapFirst swap =
        SwapFirst.of(part.posterior(), part.life(), batch.on(part.hotEnd().index()), kind.costs());
    return new RiskAnswer.OfPart(
        part.id(),
        part.kind(),
        part.hotEnd().index(),
        part.ageHours().mean(),
        swap.fitted(),
        swap.fresh().mean(),
        swap.saving());
  }

  private KindOutlook kind(FittedOutlook part) {
    return java.util.Objects.requireNonNull(outlook.kinds().get(part.kind()));
  }

  private static OptionalDouble longest(List<FittedOutlook> fitted, Batch batch, double limit) {
    double hours =
        Risk.longestHours(
            h ->
                Risk.ofAny(
                    fitted.stream()
                        .map(
                            part ->
                                new Risk(part.posterior())
                                    .riskOf(
                                        part.life(),
                                        batch.on(part.hotEnd().index()),
                                        h / batch.hours()))
                        .toList()),
            limit);
    return Double.isInfinite(hours) ? OptionalDouble.empty() : OptionalDouble.of(hours);
  }

  private String advice(
      RiskQuestion question, List<RiskAnswer.OfPart> parts, double any, OptionalDouble longest) {
    if (parts.isEmpty()) {
      return "no part is known to be on "
          + question.printer()
          + ", so that nothing can be said; tell which are: meltkeeper part fit ID --printer "
          + question.printer();
    }
    List<String> sentences = new ArrayList<>();
    parts.stream()
        .filter(part -> part.savingBySwapping() > 0 && part.failureProbability().mean() > SMALL)
        .map(this::swapFirst)
        .forEach(sentences::add);
    if (sentences.isEmpty()) {
      sentences.add(
          String.format(
              Locale.ROOT,
              "start: %s that a part fails within the %s; swapping before it would cost more than"
                  + " it saves",
              percent(any),
              hours(question.batch().hours())));
    }
    question.atMost().ifPresent(limit -> sentences.add(limitSentence(limit, any, longest)));
    return String.join(". ", sentences);
  }

  private String swapFirst(RiskAnswer.OfPart part) {
    return String.format(
        Locale.ROOT,
        "swap %s first: %s against %s with a new %s; expected saving %.2f%s",
        part.id(),
        percent(part.failureProbability().mean()),
        percent(part.newPartProbability()),
        part.kind(),
        part.savingBySwapping(),
        costs.map(c -> " " + c.currency()).orElse(""));
  }

  private static String limitSentence(double limit, double any, OptionalDouble longest) {
    String batch = any <= limit ? "this batch stays under it" : "this batch goes beyond it";
    return longest.isPresent()
        ? String.format(
            Locale.ROOT,
            "Your limit is %s: %s; the longest one like it that stays under lasts %s",
            percent(limit),
            batch,
            hours(longest.getAsDouble()))
        : String.format(
            Locale.ROOT, "Your limit is %s: no batch like this reaches it", percent(limit));
  }

  private static List<String> cautions(Batch batch, List<FittedOutlook> fitted) {
    boolean liner = fitted.stream().anyMatch(part -> part.kind().equals(LINER));
    return liner && batch.hottestCelsius() > LINER_LIMIT_CELSIUS
        ? List.of(
            String.format(
                Locale.ROOT,
                "the batch goes to %.0f °C: a liner of PTFE must stay below 260 °C; its fumes harm"
                    + " people and kill birds",
                batch.hottestCelsius()))
        : List.of();
  }

  static String percent(double share) {
    return String.format(Locale.ROOT, share < 0.0995 ? "%.1f %%" : "%.0f %%", 100 * share);
  }

  static String hours(double hours) {
    return String.format(Locale.ROOT, hours < 99.5 ? "%.1f h" : "%.0f h", hours);
  }
}
