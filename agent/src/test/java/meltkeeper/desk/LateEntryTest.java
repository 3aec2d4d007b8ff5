package meltkeeper.desk;

import static meltkeeper.desk.Bench.HERON;
import static meltkeeper.desk.Bench.HOUR;
import static meltkeeper.desk.Bench.IBIS;
import static meltkeeper.desk.Bench.NOW;
import static meltkeeper.desk.Bench.at;
import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.OptionalLong;
import java.util.Random;
import java.util.TreeMap;
import meltkeeper.ledger.Tally;
import meltkeeper.part.Because;
import meltkeeper.part.Part;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class LateEntryTest {

  private final Bench bench = new Bench();

  @Test
  void hours_belongToThePartThatWasFittedAtTheTime() {
    bench.hot(HERON, "2026-03-02T08:00:00Z", 10, 215);
    String first = bench.add("liner");
    String second = bench.add("liner");
    bench.fit(first, HERON, "2026-03-01T08:00:00Z");
    bench.remove(first, Because.JAM, "2026-03-02T11:00:00Z");
    bench.fit(second, HERON, "2026-03-02T11:00:00Z");
    assertThat(bench.hours(first)).isEqualTo(3);
    assertThat(bench.hours(second)).isEqualTo(7);
  }

  @Test
  void part_lyingOnTheShelf_gathersNothing() {
    bench.hot(HERON, "2026-03-02T08:00:00Z", 10, 215);
    String liner = bench.add("liner");
    bench.stay(liner, HERON, at("2026-03-02T09:00:00Z"), at("2026-03-02T10:00:00Z"));
    bench.fit(liner, HERON, "2026-03-02T16:00:00Z");
    assertThat(bench.hours(liner)).isEqualTo(1 + 2);
  }

  @Test
  void partsOfTwoKinds_onOneHotEnd_bothGather() {
    bench.hot(HERON, "2026-03-02T08:00:00Z", 4, 215);
    String liner = bench.add("liner");
    String nozzle = bench.add("nozzle");
    bench.fit(liner, HERON, "2026-03-01T08:00:00Z");
    bench.fit(nozzle, HERON, "2026-03-01T08:00:00Z");
    assertThat(bench.hours(liner)).isEqualTo(4);
    assertThat(bench.hours(nozzle)).isEqualTo(4);
  }

  @Test
  void stayThatIsOver_enteredBeforeALaterOne_takesItsHours() {
    bench.hot(HERON, "2026-03-02T08:00:00Z", 10, 215);
    String liner = bench.add("liner");
    bench.fit(liner, IBIS, "2026-03-05T08:00:00Z");
    bench.stay(liner, HERON, at("2026-03-02T08:00:00Z"), at("2026-03-02T13:00:00Z"));
    assertThat(bench.hours(liner)).isEqualTo(5);
    assertThat(bench.desk.parts().part(liner).stays())
        .extracting(PartAnswer.Stay::printer)
        .containsExactly("heron", "ibis");
  }

  @Test
  void earlierRemoval_enteredLate_splitsTheStayOnceTheNewFittingIsTold() {
    bench.hot(HERON, "2026-03-02T08:00:00Z", 10, 215);
    String liner = bench.add("liner");
    bench.fit(liner, HERON, "2026-03-02T08:00:00Z");
    bench.remove(liner, Because.WORN, "2026-03-02T18:00:00Z");
    PartChange early = bench.remove(liner, Because.INSPECTION, "2026-03-02T10:00:00Z");
    assertThat(early.notes()).singleElement().asString().contains("now takes nothing off");
    assertThat(bench.hours(liner)).isEqualTo(2);
    assertThat(early.part().line().ending()).isEqualTo("inspection");
    PartChange again = bench.fit(liner, HERON, "2026-03-02T15:00:00Z");
    assertThat(again.notes()).isEmpty();
    assertThat(bench.hours(liner)).isEqualTo(2 + 3);
    assertThat(again.part().line().ending()).isEqualTo("worn");
  }

  @Test
  void undo_ofARemoval_restoresTheHours() {
    bench.hot(HERON, "2026-03-02T08:00:00Z", 10, 215);
    String liner = bench.add("liner");
    bench.fit(liner, HERON, "2026-03-02T08:00:00Z");
    PartAnswer before = bench.desk.parts().part(liner);
    bench.remove(liner, Because.JAM, "2026-03-02T09:00:00Z");
    assertThat(bench.hours(liner)).isEqualTo(1);
    bench.desk.acts().undo(liner, OptionalLong.empty());
    assertThat(bench.desk.parts().part(liner)).isEqualTo(before);
  }

  @Test
  void eventBeforeThePartWasAdded_movesWhenItWasKnown() {
    String liner = bench.add("liner");
    PartChange change = bench.fit(liner, HERON, "2026-02-01T08:00:00Z");
    assertThat(change.part().added()).isEqualTo(Instant.parse("2026-02-01T08:00:00Z"));
  }

  @Test
  void edgeWithinAStoredStretch_isToldWithItsSpan() {
    bench.hot(HERON, "2026-03-02T08:00:00Z", 1, 215);
    String liner = bench.add("liner");
    PartChange change = bench.fit(liner, HERON, "2026-03-02T08:32:00Z");
    assertThat(change.shared())
        .containsExactly(
            new SharedEdge(
                Instant.parse("2026-03-02T08:32:00Z"),
                Instant.parse("2026-03-02T08:30:00Z"),
                Instant.parse("2026-03-02T08:35:00Z")));
    // 28 of 60 minutes: three fifths of the stretch in question, and five whole ones.
    assertThat(bench.hours(liner)).isEqualTo(0.467);
  }

  @Test
  void edgeBetweenStoredStretches_orWhereNothingWasHot_isExact() {
    bench.hot(HERON, "2026-03-02T08:00:00Z", 1, 215);
    String liner = bench.add("liner");
    assertThat(bench.fit(liner, HERON, "2026-03-02T08:30:00Z").shared()).isEmpty();
    assertThat(bench.remove(liner, Because.JAM, "2026-03-03T08:32:00Z").shared()).isEmpty();
  }

  @ParameterizedTest(name = "seed {0}")
  @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
  void swapTime_movedAnywhere_conservesTheSumToTheNanosecond(long seed) {
    Random random = new Random(seed);
    long begin = at("2026-03-02T08:00:00Z");
    for (int i = 0; i < 12; i++) {
      long from = begin + i * HOUR;
      bench.hot(HERON, from, from + 1 + random.nextLong(HOUR), 180 + random.nextInt(80));
    }
    String first = bench.add("liner");
    String second = bench.add("liner");
    Tally whole = bench.total(HERON);
    for (int i = 0; i < 40; i++) {
      long swap = begin + random.nextLong(12 * HOUR);
      long millisecond = swap - Math.floorMod(swap, 1_000_000L);
      bench.stay(first, HERON, begin - HOUR, millisecond);
      bench.stay(second, HERON, millisecond, NOW);
      assertThat(sum()).isEqualTo(whole);
      for (String id : List.of(second, first)) {
        bench.desk.acts().undo(id, OptionalLong.empty());
        bench.desk.acts().undo(id, OptionalLong.empty());
      }
      assertThat(sum()).isEqualTo(Tally.NONE);
    }
  }

  private Tally sum() {
    // A new reader each time: sums are kept for two seconds at least.
    return new PartHeats(bench.store)
        .heats(NOW).stream().map(PartHeat::tally).reduce(Tally.NONE, Tally::plus);
  }

  private record Stay(String id, long from, long until) {}

  @ParameterizedTest(name = "seed {0}")
  @ValueSource(longs = {11, 12, 13, 14, 15, 16, 17, 18})
  void staysEnteredInAnyOrder_giveTheSameShelfAndHours(long seed) {
    Random random = new Random(seed);
    List<Stay> stays = new ArrayList<>();
    long time = at("2026-03-01T00:00:00Z");
    for (int i = 0; i < 12; i++) {
      long until = time + (1 + random.nextInt(600)) * Bench.MINUTE;
      stays.add(new Stay("L-00" + (1 + random.nextInt(4)), time, until));
      time = until + random.nextInt(2) * Bench.MINUTE * random.nextInt(100);
    }
    // A part that comes off and goes on at one instant has two events then: not entered here.
    stays.removeIf(
        stay -> stays.stream().anyMatch(s -> s.id().equals(stay.id()) && s.until() == stay.from()));
    List<Part> inOrder = shelfAfter(stays);
    for (int i = 0; i < 5; i++) {
      Collections.shuffle(stays, random);
      assertThat(shelfAfter(stays)).isEqualTo(inOrder);
    }
  }

  private static List<Part> shelfAfter(List<Stay> stays) {
    Bench bench = new Bench();
    for (int i = 0; i < 4; i++) {
      bench.add("liner");
    }
    stays.forEach(stay -> bench.stay(stay.id(), HERON, stay.from(), stay.until()));
    return bench.store.parts();
  }

  @Test
  void keptSums_growWithTheRunningTotal_withoutAskingTheStore() {
    bench.hot(HERON, "2026-03-02T08:00:00Z", 2, 215);
    String liner = bench.add("liner");
    bench.fit(liner, HERON, "2026-03-02T08:00:00Z");
    PartHeats heats = bench.desk.parts().heats();
    assertThat(heats.heats(NOW)).singleElement().satisfies(h -> assertHours(h, 2));
    bench.hot(HERON, "2026-03-02T10:00:00Z", 3, 225);
    assertThat(heats.heats(NOW)).singleElement().satisfies(h -> assertHours(h, 5));
    assertThat(heats.heats(new TreeMap<>(), NOW))
        .as("totals that are not known yet add nothing")
        .singleElement()
        .satisfies(h -> assertHours(h, 2));
  }

  @Test
  void keptSums_areReadAnewAfterAnotherProgramChangedTheParts() {
    bench.hot(HERON, "2026-03-02T08:00:00Z", 2, 215);
    String liner = bench.add("liner");
    bench.fit(liner, HERON, "2026-03-02T08:00:00Z");
    PartHeats heats = new PartHeats(bench.store);
    assertThat(heats.heats(NOW)).singleElement().satisfies(h -> assertHours(h, 2));
    new Bench(bench.store).remove(liner, Because.JAM, "2026-03-02T09:00:00Z");
    assertThat(heats.heats(NOW)).singleElement().satisfies(h -> assertHours(h, 1));
  }

  private static void assertHours(PartHeat heat, double hours) {
    assertThat(heat.tally().exposure().hotHours()).isEqualTo(hours);
  }
}
