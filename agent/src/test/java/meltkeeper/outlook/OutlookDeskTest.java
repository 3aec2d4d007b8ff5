package meltkeeper.outlook;

import static meltkeeper.desk.Bench.HERON;
import static meltkeeper.desk.Bench.HOUR;
import static meltkeeper.desk.Bench.IBIS;
import static meltkeeper.desk.Bench.NOW;
import static meltkeeper.desk.Bench.at;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import meltkeeper.desk.Bench;
import meltkeeper.desk.Shop;
import meltkeeper.life.Posterior;
import meltkeeper.life.Risk;
import meltkeeper.part.Because;
import meltkeeper.part.Belief;
import meltkeeper.part.Costs;
import meltkeeper.part.Exposure;
import meltkeeper.part.Kind;
import meltkeeper.store.MemoryStore;
import org.junit.jupiter.api.Test;

class OutlookDeskTest {

  /** Ageing is known: 10 K halve a life. */
  private static final Belief SURE_OF_HEAT = new Belief(600, 0.35, 2.5, 0.4, 10, 0.001, 225);

  private static final Shop SHOP =
      new Shop(
          List.of("heron", "ibis"),
          List.of(kind("liner", SURE_OF_HEAT), kind("nozzle", SURE_OF_HEAT)),
          Optional.of(new Costs("EUR", 25, 18)),
          ZoneId.of("Europe/Vienna"));

  private final Bench bench = new Bench(new MemoryStore(), SHOP);
  private final OutlookDesk desk = new OutlookDesk(bench.store, SHOP);

  private static Kind kind(String name, Belief belief) {
    return new Kind(name, 4.50, 15, Optional.of(belief), Optional.empty(), Optional.empty());
  }

  private LifeAnswer.OfKind liners() {
    return liners(NOW);
  }

  private LifeAnswer.OfKind liners(long now) {
    return java.util.Objects.requireNonNull(
        desk.life(LifeQuestion.USUAL, now).kinds().get("liner"));
  }

  /** Fits a new liner three days ago, and works it ten hours a day. */
  private String working(meltkeeper.protocol.HotEnd hotEnd, double... celsiusByTurns) {
    String liner = bench.add("liner");
    long from = NOW - 72 * HOUR;
    bench.fit(liner, hotEnd, meltkeeper.part.Moments.instant(from).toString());
    for (int day = 0; day < 3; day++) {
      for (int hour = 0; hour < 10; hour++) {
        long begin = from + (day * 24L + hour) * HOUR;
        bench.hot(hotEnd, begin, begin + HOUR, celsiusByTurns[hour % celsiusByTurns.length]);
      }
    }
    return liner;
  }

  @Test
  void noPart_answer_isTheBelief() {
    assertThat(liners().parts()).isZero();
    assertThat(liners().notes()).contains("no part has run yet: this is the belief alone");
    assertThat(liners().spares().keep()).isZero();
  }

  @Test
  void hotterHalfOfTheHours_isDueEarlierByTheRatioThatTheHalvingIntervalImplies() {
    // Common practice, no source: one material at 225 degrees against a hotter one at 237.
    working(HERON, 225);
    working(IBIS, 225, 237);
    List<LifeAnswer.Fitted> fitted = liners().fitted();
    LifeAnswer.Fitted mixed = fitted.get(0);
    LifeAnswer.Fitted cool = fitted.get(1);
    assertThat(mixed.printer()).as("due first").isEqualTo("ibis");
    double ratio = (1 + Math.pow(2, 12 / 10.0)) / 2;
    assertThat(mixed.ageHours().p50() / cool.ageHours().p50()).isCloseTo(ratio, within(1e-3));
    double age = liners().advice().replaceAt().orElseThrow();
    double coolWhole = cool.due().orElseThrow().hours() / (age - cool.ageHours().p50());
    double mixedWhole = mixed.due().orElseThrow().hours() / (age - mixed.ageHours().p50());
    assertThat(coolWhole / mixedWhole).isCloseTo(ratio, within(1e-3));
    assertThat(mixed.failsWithin7Days().orElseThrow())
        .isGreaterThan(cool.failsWithin7Days().orElseThrow())
        .isGreaterThan(mixed.failsWithin24Hours().orElseThrow());
  }

  @Test
  void jamsAndSwaps_moveTheAnswer_atOnce() {
    working(HERON, 225);
    double before = liners().lifeHours().p50();
    bench
        .desk
        .paper()
        .take("paper", "id,kind,ended,temperature,hours\nP-1,liner,jam,225,150\n", NOW);
    assertThat(liners().failures()).isEqualTo(1);
    assertThat(liners().lifeHours().p50()).isLessThan(before);
  }

  @Test
  void sameFacts_areNotReckonedTwice_untilTheyHaveAged() {
    working(HERON, 225);
    desk.refresh(NOW);
    FittedOutlook first = desk.latest().get(0);
    desk.refresh(NOW + 60_000_000_000L);
    assertThat(desk.latest().get(0)).isSameAs(first);
    bench.hot(HERON, NOW, NOW + HOUR, 225);
    desk.refresh(NOW + HOUR);
    assertThat(desk.latest().get(0).ageHours().mean()).isCloseTo(31, within(1e-6));
  }

  @Test
  void habit_isTheShopsOwnSwaps_thenTheCalendar() {
    working(HERON, 225);
    String early = bench.add("liner");
    bench.hot(IBIS, at("2026-02-01T00:00:00Z"), at("2026-02-11T00:00:00Z"), 225);
    bench.stay(early, IBIS, at("2026-02-01T00:00:00Z"), at("2026-02-11T00:00:00Z"));
    List<LifeAnswer.Against> against = liners().advice().against();
    assertThat(against).hasSize(2);
    assertThat(against.get(0).habit()).contains("after 240 hot hours");
    assertThat(against.get(0).hours()).isCloseTo(240, within(0.01));
    assertThat(against.get(1).habit()).isEqualTo("a swap every 60 days");
    assertThat(against.get(1).hours()).as("ten hours a day").isCloseTo(600, within(0.01));
    assertThat(liners().advice().savingPer1000Hours().orElseThrow())
        .isEqualTo(against.get(0).savingPer1000Hours());
  }

  @Test
  void excusedJam_isNoFailure() {
    String liner = working(HERON, 225);
    bench
        .desk
        .acts()
        .remove(
            new meltkeeper.desk.RemovePart(
                new meltkeeper.desk.RemovePart.Which.Id(liner),
                Because.JAM,
                true,
                java.util.OptionalLong.of(NOW)),
            NOW);
    assertThat(liners().failures()).isZero();
    assertThat(liners().parts()).isEqualTo(1);
  }

  @Test
  void unknownKind_isRefused() {
    assertThatThrownBy(() -> desk.life(new LifeQuestion(Optional.of("lier"), 60, 0.95, false), NOW))
        .hasMessageContaining("did you mean liner?");
  }

  @Test
  void risk_isThatOfTheModel_withThePartItselfAmongTheData() {
    String liner = working(HERON, 225);
    RiskAnswer answer = desk.risk(batch("heron", 24, 237, Optional.empty()), NOW);
    RiskAnswer.OfPart part = answer.parts().get(0);
    assertThat(part.id()).isEqualTo(liner);
    FittedOutlook fitted = desk.latest().get(0);
    Posterior posterior = fitted.posterior();
    assertThat(posterior.parts()).extracting("id").contains(liner);
    assertThat(part.failureProbability())
        .isEqualTo(new Risk(posterior).ofPart(fitted.life(), Exposure.of(237, 24)));
    assertThat(answer.any()).isCloseTo(part.failureProbability().mean(), within(1e-12));
    assertThat(answer.advice()).startsWith("start: ");
  }

  @Test
  void oldPart_isSwappedFirst_andTheMoneyIsTold() {
    bench
        .desk
        .paper()
        .take("paper", "id,kind,ended,temperature,hours\nP-1,liner,still-fitted,225,900\n", NOW);
    bench.fit("P-1", HERON, "2026-03-10T10:00:00Z");
    RiskAnswer answer = desk.risk(batch("heron", 24, 237, Optional.of(0.05)), NOW);
    assertThat(answer.advice())
        .matches(
            "swap P-1 first: \\d+ % against [0-9.]+ % with a new liner; expected saving"
                + " [0-9.]+ EUR\\. Your limit is 5\\.0 %: this batch goes beyond it; the longest one"
                + " like it that stays under lasts [0-9.]+ h");
    double longest = answer.longestHours().orElseThrow();
    assertThat(desk.risk(batch("heron", longest, 237, Optional.empty()), NOW).any())
        .isCloseTo(0.05, within(1e-4));
  }

  @Test
  void emptyPrinter_saysHowToTellOfAPart() {
    RiskAnswer answer = desk.risk(batch("heron", 5, 220, Optional.of(0.1)), NOW);
    assertThat(answer.any()).isZero();
    assertThat(answer.advice()).contains("no part is known to be on heron").contains("part fit");
    assertThat(answer.longestHours()).isEmpty();
  }

  @Test
  void hotBatchThroughALiner_isCautioned() {
    working(HERON, 225);
    assertThat(desk.risk(batch("heron", 2, 260, Optional.empty()), NOW).cautions())
        .singleElement()
        .asString()
        .contains("kill birds");
    assertThat(desk.risk(batch("heron", 2, 250, Optional.empty()), NOW).cautions()).isEmpty();
  }

  @Test
  void unknownPrinter_isRefused() {
    assertThatThrownBy(() -> desk.risk(batch("hern", 5, 220, Optional.empty()), NOW))
        .hasMessageContaining("did you mean heron?");
  }

  @Test
  void variants_haveLivesOfTheirOwn_thatLeanOnTheKind() {
    bench
        .desk
        .paper()
        .take("paper", "id,kind,ended,temperature,hours\nP-1,liner,jam,225,500\n", NOW);
    bench
        .desk
        .acts()
        .add(new meltkeeper.desk.AddPart("liner", Optional.of("V-1"), Optional.of("plated")), NOW);
    bench.fit("V-1", HERON, "2026-03-10T10:00:00Z");
    LifeAnswer.OfVariants variants = liners().variants().orElseThrow();
    assertThat(variants.variants()).singleElement().extracting("variant").isEqualTo("plated");
    assertThat(variants.probabilityDifferent()).isBetween(0.0, 1.0);
  }

  @Test
  void curves_fallFromOne_andTickEveryPart() {
    working(HERON, 225);
    bench
        .desk
        .paper()
        .take("paper", "id,kind,ended,temperature,hours\nP-1,liner,jam,225,500\n", NOW);
    KindCurves curves = java.util.Objects.requireNonNull(desk.curves(NOW).get("liner"));
    assertThat(curves.ticks()).extracting(KindCurves.Tick::failed).containsExactly(false, true);
    double before = 1;
    for (var alive : curves.alive()) {
      assertThat(alive.mean()).isLessThan(before);
      before = alive.mean();
    }
    assertThat(before).isLessThan(0.05);
    assertThat(desk.curves(NOW)).as("no nozzle has run").doesNotContainKey("nozzle");
  }

  private static RiskQuestion batch(
      String printer, double hours, double celsius, Optional<Double> atMost) {
    return new RiskQuestion(
        printer,
        new Batch(Map.of(0, Exposure.of(celsius, hours)), hours, celsius, List.of()),
        atMost);
  }
}
