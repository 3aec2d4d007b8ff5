package meltkeeper.outlook;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import meltkeeper.life.AgeReplacement;
import meltkeeper.life.Cleaning;
import meltkeeper.life.CleaningCosts;
import meltkeeper.life.DueIn;
import meltkeeper.life.HotIdle;
import meltkeeper.life.KindLife;
import meltkeeper.life.PartLife;
import meltkeeper.life.PredictiveCheck;
import meltkeeper.life.Spares;
import meltkeeper.life.Spell;
import meltkeeper.life.Variants;
import meltkeeper.part.Costs;

/** Makes the answer for one kind. */
final class KindAnswers {

  /** Fixed, so that the same question has the same answer. */
  private static final long SPARES_SEED = 20_260_301;

  private KindAnswers() {}

  static LifeAnswer.OfKind of(KindOutlook kind, LifeQuestion question, Optional<Costs> costs) {
    KindLife life = kind.life();
    List<String> notes = new ArrayList<>(kind.notes());
    notes.addAll(life.notes());
    return new LifeAnswer.OfKind(
        life.referenceTemperature(),
        life.parts(),
        life.failures(),
        life.lifeHours(),
        life.meanLifeHours(),
        life.shape(),
        life.halving(),
        life.believed(),
        life.learned(),
        advice(kind),
        fitted(kind),
        kind.variants().map(variants -> variants(variants, kind)),
        HotIdle.of(kind.posterior().belief(), kind.lives()),
        cleaning(kind, costs),
        spares(kind, question),
        notes,
        question.explained() ? Optional.of(explained(kind)) : Optional.empty());
  }

  private static LifeAnswer.Advice advice(KindOutlook kind) {
    var advice = kind.life().advice();
    List<LifeAnswer.Against> against = new ArrayList<>();
    for (Habit habit : kind.habits()) {
      double cost = 1000 * habit.calendar().costPerHour(kind.posterior(), kind.costs());
      against.add(
          new LifeAnswer.Against(
              habit.words(),
              habit.calendar().meanAge(kind.posterior()),
              cost,
              cost - advice.costPer1000Hours()));
    }
    return new LifeAnswer.Advice(
        advice.replaceAt(),
        advice.costPer1000Hours(),
        advice.savingPer1000Hours(),
        against,
        advice.because());
  }

  private static List<LifeAnswer.Fitted> fitted(KindOutlook kind) {
    return kind.fitted().stream()
        .sorted(Comparator.comparingDouble(KindAnswers::urgency))
        .map(KindAnswers::fitted)
        .toList();
  }

  private static double urgency(FittedOutlook part) {
    return part.due().map(Due::hours).orElse(Double.POSITIVE_INFINITY);
  }

  private static LifeAnswer.Fitted fitted(FittedOutlook part) {
    OptionalDouble used =
        part.replaceAt().isPresent()
            ? OptionalDouble.of(part.ageHours().p50() / part.replaceAt().getAsDouble())
            : OptionalDouble.empty();
    return new LifeAnswer.Fitted(
        part.id(),
        part.hotEnd().printer(),
        part.hotEnd().index(),
        part.ageHours(),
        used,
        part.due(),
        part.within24Hours(),
        part.within7Days());
  }

  private static LifeAnswer.OfVariants variants(Variants variants, KindOutlook kind) {
    return new LifeAnswer.OfVariants(
        variants.probabilityDifferent(),
        variants.believedDifferent(),
        variants.variants().stream()
            .map(
                one ->
                    new LifeAnswer.OfVariant(
                        one.variant(),
                        one.parts(),
                        one.failures(),
                        one.lifeHours(),
                        AgeReplacement.of(one.posterior(), kind.costs()).cheapest().at(),
                        one.probabilityLonger()))
            .toList());
  }

  /** By the plan of the configuration, else by what the shop's own cleanings were told to do. */
  private static Optional<LifeAnswer.OfCleaning> cleaning(KindOutlook kind, Optional<Costs> costs) {
    double perMinute = costs.map(Costs::labourPerHour).orElse(0.0) / 60;
    Optional<CleaningCosts> told =
        kind.kind()
            .cleaning()
            .map(p -> new CleaningCosts(p.money() + perMinute * p.minutes(), p.restores()))
            .or(
                () ->
                    restoredOnAverage(kind.lives())
                        .map(r -> new CleaningCosts(perMinute * kind.kind().swapMinutes(), r)));
    return told.map(cleaning -> Cleaning.of(kind.posterior(), kind.costs(), cleaning))
        .map(
            c ->
                new LifeAnswer.OfCleaning(
                    c.pays(),
                    c.restores(),
                    c.times(),
                    c.at(),
                    c.costPer1000Hours(),
                    c.buyNewCostPer1000Hours()));
  }

  private static Optional<Double> restoredOnAverage(List<PartLife> lives) {
    List<Double> restored =
        lives.stream()
            .flatMap(life -> life.spells().stream())
            .map(Spell::restoredBefore)
            .filter(r -> r > 0)
            .toList();
    return restored.isEmpty()
        ? Optional.empty()
        : Optional.of(restored.stream().mapToDouble(r -> r).average().orElse(0));
  }

  private static LifeAnswer.OfSpares spares(KindOutlook kind, LifeQuestion question) {
    List<Spares.Place> places =
        kind.fitted().stream()
            .filter(part -> !part.duty().isIdle())
            .map(part -> new Spares.Place(part.life(), part.duty().ofDays(1)))
            .toList();
    Spares spares =
        Spares.needed(
            kind.posterior(),
            places,
            question.spareDays(),
            kind.life().advice().replaceAt(),
            question.confidence(),
            SPARES_SEED);
    return new LifeAnswer.OfSpares(
        question.spareDays(), question.confidence(), places.size(), spares.mean(), spares.enough());
  }

  private static LifeAnswer.Explained explained(KindOutlook kind) {
    PredictiveCheck check = PredictiveCheck.of(kind.posterior());
    List<LifeAnswer.OfPart> parts = new ArrayList<>();
    for (PartLife life : kind.lives()) {
      parts.add(
          new LifeAnswer.OfPart(
              life.id(),
              life.ending().word(),
              life.clockHours(),
              DueIn.age(kind.posterior(), life).mean(),
              (int) life.spells().stream().filter(s -> s.restoredBefore() > 0).count(),
              life.lastCelsius(),
              check.places().stream()
                  .filter(place -> place.id().equals(life.id()))
                  .map(PredictiveCheck.Place::share)
                  .toList()));
    }
    return new LifeAnswer.Explained(
        "Weibull life in reference hours, a halving interval for heat; log life and log shape"
            + " believed to be normal, the halving interval normal above 3 K; hours of parts that"
            + " have not failed count as survived",
        kind.posterior().logEvidence(),
        check.expected(),
        parts);
  }
}
