package meltkeeper.outlook;

import static meltkeeper.desk.Bench.HERON;
import static meltkeeper.desk.Bench.IBIS;
import static meltkeeper.desk.Bench.NOW;
import static meltkeeper.desk.Bench.at;
import static meltkeeper.desk.Bench.when;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import meltkeeper.desk.Bench;
import meltkeeper.desk.FitPart;
import meltkeeper.desk.RemovePart;
import meltkeeper.life.PartLife;
import meltkeeper.life.Spell;
import meltkeeper.part.Because;
import meltkeeper.part.Ending;
import meltkeeper.part.PriorPast;
import org.junit.jupiter.api.Test;

class LifeWalkTest {

  private final Bench bench = new Bench();

  private PartLife life(String id) {
    return LifeWalk.of(
        bench.store,
        bench.store.parts().stream().filter(p -> p.id().equals(id)).findFirst().orElseThrow());
  }

  private static List<Double> hours(PartLife life) {
    return life.spells().stream().map(spell -> spell.hot().hotHours()).toList();
  }

  @Test
  void cleaning_endsASpell_evenOnThePrinter() {
    bench.hot(HERON, "2026-03-02T08:00:00Z", 10, 215);
    String liner = bench.add("liner");
    bench.fit(liner, HERON, "2026-03-02T08:00:00Z");
    bench.desk.acts().clean(liner, 0.7, when("2026-03-02T12:00:00Z"), NOW);
    PartLife life = life(liner);
    assertThat(hours(life)).containsExactly(4.0, 6.0);
    assertThat(life.spells()).extracting(Spell::restoredBefore).containsExactly(0.0, 0.7);
  }

  @Test
  void jamThatWasMadeGood_isAFailureInTheMidstOfALife() {
    bench.hot(HERON, "2026-03-02T08:00:00Z", 10, 215);
    String nozzle = bench.add("nozzle");
    bench.fit(nozzle, HERON, "2026-03-02T08:00:00Z");
    bench.remove(nozzle, Because.JAM, "2026-03-02T11:00:00Z");
    bench.desk.acts().clean(nozzle, 0.5, when("2026-03-02T11:30:00Z"), NOW);
    assertThat(life(nozzle).failures()).as("it lies there, jammed").isEqualTo(1);
    bench.fit(nozzle, HERON, "2026-03-02T12:00:00Z");
    PartLife life = life(nozzle);
    assertThat(hours(life)).containsExactly(3.0, 6.0);
    assertThat(life.spells()).extracting(Spell::failed).containsExactly(true, false);
    assertThat(life.spells()).extracting(Spell::restoredBefore).containsExactly(0.0, 0.5);
    assertThat(life.failures()).isEqualTo(1);
    assertThat(life.hasFailed()).isFalse();
    bench.remove(nozzle, Because.WORN, "2026-03-02T18:00:00Z");
    assertThat(life(nozzle).failures()).isEqualTo(2);
  }

  @Test
  void excusedJam_isNoFailure_andTheLifeGoesOn() {
    bench.hot(HERON, "2026-03-02T08:00:00Z", 10, 215);
    String liner = bench.add("liner");
    bench.fit(liner, HERON, "2026-03-02T08:00:00Z");
    bench
        .desk
        .acts()
        .remove(
            new RemovePart(
                new RemovePart.Which.Id(liner), Because.JAM, true, when("2026-03-02T10:00:00Z")),
            NOW);
    assertThat(life(liner).ending()).isEqualTo(new Ending.Censored(Ending.Why.EXCUSED));
    bench.fit(liner, HERON, "2026-03-02T12:00:00Z");
    assertThat(life(liner).failures()).isZero();
    assertThat(life(liner).clockHours()).isEqualTo(8);
  }

  @Test
  void pastFromElsewhere_isUncertainBeforeTheFirstHour_andToldLater() {
    bench.hot(HERON, "2026-03-02T08:00:00Z", 2, 215);
    String liner = bench.add("liner");
    fitWithPast(liner, "2026-03-02T08:00:00Z", new FitPart.Past(120, 60, 220));
    assertThat(life(liner).past()).contains(new PriorPast(120, 60, 220));
    assertThat(life(liner).clockHours()).isEqualTo(2);
    bench.remove(liner, Because.INSPECTION, "2026-03-02T12:00:00Z");
    fitWithPast(liner, "2026-03-03T12:00:00Z", new FitPart.Past(30, 0, 220));
    assertThat(life(liner).past()).contains(new PriorPast(120, 60, 220));
    assertThat(life(liner).clockHours()).isEqualTo(32);
  }

  private void fitWithPast(String id, String at, FitPart.Past past) {
    bench
        .desk
        .acts()
        .fit(new FitPart(id, "heron", 0, when(at), Optional.of(past), Optional.empty()), NOW);
  }

  @Test
  void failure_knowsTheTemperatureOfItsLastHotHour_acrossColdDays() {
    bench.hot(HERON, "2026-02-02T08:00:00Z", 100, 215);
    bench.hot(HERON, at("2026-02-20T08:00:00Z"), at("2026-02-20T08:30:00Z"), 237);
    String liner = bench.add("liner");
    bench.fit(liner, HERON, "2026-02-02T08:00:00Z");
    bench.remove(liner, Because.JAM, "2026-03-05T08:00:00Z");
    // Half an hour at 237 after half an hour at 215, twelve cold days apart.
    assertThat(life(liner).lastCelsius()).isPresent();
    assertThat(life(liner).lastCelsius().orElseThrow()).isCloseTo(226, within(1e-6));
  }

  @Test
  void lessThanAnHourInTheLedger_lastTemperatureIsNotKnown() {
    bench.hot(IBIS, at("2026-02-20T08:00:00Z"), at("2026-02-20T08:30:00Z"), 237);
    String liner = bench.add("liner");
    bench.fit(liner, IBIS, "2026-02-02T08:00:00Z");
    bench.remove(liner, Because.JAM, "2026-03-05T08:00:00Z");
    assertThat(life(liner).lastCelsius()).isEmpty();
  }

  @Test
  void paperPast_comesFirst_andAJamOnPaperThatWasMadeGoodCounts() {
    bench
        .desk
        .paper()
        .take("paper", "id,kind,ended,temperature,hours\nP-1,liner,jam,225,400\n", NOW);
    assertThat(life("P-1").failures()).isEqualTo(1);
    assertThat(hours(life("P-1"))).containsExactly(400.0);
    bench.hot(HERON, "2026-03-02T08:00:00Z", 5, 215);
    bench.desk.acts().clean("P-1", 0.5, when("2026-03-02T07:00:00Z"), NOW);
    bench.fit("P-1", HERON, "2026-03-02T08:00:00Z");
    assertThat(hours(life("P-1"))).containsExactly(400.0, 5.0);
    assertThat(life("P-1").failures()).isEqualTo(1);
  }
}
