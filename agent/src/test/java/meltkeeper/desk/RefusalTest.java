package meltkeeper.desk;

import static meltkeeper.desk.Bench.HERON;
import static meltkeeper.desk.Bench.IBIS;
import static meltkeeper.desk.Bench.NOW;
import static meltkeeper.desk.Bench.when;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import meltkeeper.part.Because;
import org.assertj.core.api.ThrowableAssert.ThrowingCallable;
import org.junit.jupiter.api.Test;

/** What the desk refuses, in the words that the shop reads. Vienna is UTC+1 in March. */
class RefusalTest {

  private final Bench bench = new Bench();

  private static List<String> faults(ThrowingCallable act) {
    return catchThrowableOfType(RefusedException.class, act).faults().stream()
        .map(Object::toString)
        .toList();
  }

  @Test
  void unknownPart_namesTheNearestId() {
    bench.add("liner");
    assertThat(faults(() -> bench.fit("L-01", HERON, "2026-03-01T08:00:00Z")))
        .containsExactly(
            "part: found \"L-01\"; allowed: the id of a part that was added; did you mean L-001?");
  }

  @Test
  void unknownKind_namesTheNearestKindAndAll() {
    assertThat(faults(() -> bench.add("nozle")))
        .containsExactly(
            "kind: found \"nozle\"; allowed: one of liner, nozzle; did you mean nozzle?");
  }

  @Test
  void everyFaultOfAFitting_isToldAtOnce() {
    FitPart fit =
        new FitPart(
            "L-001",
            "hern",
            0,
            when("2027-01-01T00:00:00Z"),
            Optional.of(new FitPart.Past(-1, Double.NaN, 900)),
            Optional.empty());
    assertThat(faults(() -> bench.desk.acts().fit(fit, NOW)))
        .containsExactly(
            "part: found \"L-001\"; allowed: the id of a part that was added; no part is known yet:"
                + " part add KIND",
            "printer: found \"hern\"; allowed: one of heron, ibis; did you mean heron?",
            "prior-hours: found \"-1.0\"; allowed: 0 to 100000 hot hours",
            "prior-spread: found \"NaN\"; allowed: 0 to 100000 hours; give about how far off the"
                + " prior hours may be, 0 when they are known",
            "prior-temperature: found \"900.0\"; allowed: -50 to 600 °C",
            "at: found \"2027-01-01 01:00\"; allowed: a time that is not in the future; here it is"
                + " 2026-03-10 13:00, in zone Europe/Vienna");
  }

  @Test
  void hotEndBeyondTheLast_isRefused() {
    String liner = bench.add("liner");
    FitPart fit =
        new FitPart(liner, "heron", 16, OptionalLong.empty(), Optional.empty(), Optional.empty());
    assertThat(faults(() -> bench.desk.acts().fit(fit, NOW)))
        .containsExactly("hot-end: found \"16\"; allowed: 0 to 15; the first hot end is 0");
  }

  @Test
  void partThatIsElsewhere_mustComeOffFirst() {
    String liner = bench.add("liner");
    bench.fit(liner, HERON, "2026-03-01T08:00:00Z");
    assertThat(faults(() -> bench.fit(liner, IBIS, "2026-03-02T08:00:00Z")))
        .containsExactly(
            "part: found \"L-001\"; allowed: a part that is on no hot end at 2026-03-02 09:00; it"
                + " is on heron since 2026-03-01 09:00; enter first when it came off: part remove"
                + " L-001 --because REASON --at TIME");
  }

  @Test
  void lateFittingBeforeAKnownOne_mustSayWhenItEnded() {
    String liner = bench.add("liner");
    bench.fit(liner, HERON, "2026-03-05T08:00:00Z");
    assertThat(faults(() -> bench.fit(liner, IBIS, "2026-03-02T08:00:00Z")))
        .containsExactly(
            "until: found \"open\"; allowed: a stay that ends before 2026-03-05 09:00; L-001 was"
                + " fitted on heron then; say when it came off ibis before that: --until TIME"
                + " --because REASON");
  }

  @Test
  void hotEndThatHoldsOneOfTheKind_namesItAndHowToTakeItOff() {
    String first = bench.add("liner");
    String second = bench.add("liner");
    bench.fit(first, HERON, "2026-03-01T08:00:00Z");
    assertThat(faults(() -> bench.fit(second, HERON, "2026-03-02T08:00:00Z")))
        .containsExactly(
            "printer: found \"heron\"; allowed: a hot end that holds no liner at 2026-03-02 09:00;"
                + " L-001 is there since 2026-03-01 09:00; take it off first: part remove L-001"
                + " --because REASON --at TIME");
    assertThat(bench.desk.parts().part(second).stays()).isEmpty();
  }

  @Test
  void partThatIsNotFitted_cannotComeOff() {
    String liner = bench.add("liner");
    assertThat(faults(() -> bench.remove(liner, Because.JAM, "2026-03-02T08:00:00Z")))
        .containsExactly(
            "part: found \"L-001\"; allowed: a part that was fitted just before 2026-03-02 09:00;"
                + " it was not fitted by then; enter the fitting first: part fit L-001");
  }

  @Test
  void retiredPart_cannotBeFittedAgain() {
    String liner = bench.add("liner");
    bench.desk.acts().retire(liner, when("2026-03-01T08:00:00Z"), NOW);
    assertThat(faults(() -> bench.fit(liner, HERON, "2026-03-02T08:00:00Z")))
        .containsExactly(
            "part: found \"L-001\"; allowed: a part that was not thrown away by then; it was"
                + " retired on 2026-03-01 09:00; add its successor with part add, or take that back"
                + " with part undo L-001");
  }

  @Test
  void secondEventAtOneInstant_isRefused() {
    String liner = bench.add("liner");
    bench.fit(liner, HERON, "2026-03-02T08:00:00Z");
    assertThat(faults(() -> bench.remove(liner, Because.JAM, "2026-03-02T08:00:00Z")))
        .anyMatch(
            fault ->
                fault.startsWith(
                    "at: found \"2026-03-02 09:00\"; allowed: a time at which nothing else happened"
                        + " to L-001; at that very instant it was fitted on heron"));
  }

  @Test
  void clockAheadByLessThanAMinute_isAccepted() {
    String liner = bench.add("liner");
    assertThat(bench.fit(liner, HERON, "2026-03-10T12:00:50Z").part().line().fitted()).isPresent();
    assertThat(faults(() -> bench.remove(liner, Because.JAM, "2026-03-10T12:01:10Z"))).hasSize(1);
  }

  @Test
  void removalByPlace_findsThePartThatWasThereThen() {
    String first = bench.add("liner");
    String second = bench.add("liner");
    bench.stay(first, HERON, Bench.at("2026-03-01T08:00:00Z"), Bench.at("2026-03-02T08:00:00Z"));
    bench.fit(second, HERON, "2026-03-02T08:00:00Z");
    RemovePart.Which held = new RemovePart.Which.HeldBy("heron", 0, "liner");
    PartChange change =
        bench
            .desk
            .acts()
            .remove(new RemovePart(held, Because.WORN, false, OptionalLong.empty()), NOW);
    assertThat(change.part().line().id()).isEqualTo(second);
    assertThat(
            faults(
                () ->
                    bench
                        .desk
                        .acts()
                        .remove(
                            new RemovePart(held, Because.WORN, false, when("2026-03-10T12:00:30Z")),
                            NOW)))
        .containsExactly(
            "kind: found \"liner\"; allowed: a kind that heron held just before 2026-03-10 13:00:30;"
                + " part list --printer heron shows what is on it now");
  }

  @Test
  void excusedJam_endsALifeUnseen() {
    String liner = bench.add("liner");
    bench.fit(liner, HERON, "2026-03-02T08:00:00Z");
    PartChange change =
        bench
            .desk
            .acts()
            .remove(
                new RemovePart(
                    new RemovePart.Which.Id(liner), Because.JAM, true, OptionalLong.empty()),
                NOW);
    assertThat(change.part().line().ending()).isEqualTo("excused");
  }

  @Test
  void undoThatAFittingRestsOn_namesIt() {
    String first = bench.add("liner");
    String second = bench.add("liner");
    bench.fit(first, HERON, "2026-03-01T08:00:00Z");
    bench.remove(first, Because.JAM, "2026-03-02T08:00:00Z");
    bench.fit(second, HERON, "2026-03-03T08:00:00Z");
    assertThat(faults(() -> bench.desk.acts().undo(first, OptionalLong.empty())))
        .singleElement()
        .asString()
        .contains("L-001 would still be where it was when L-002 was fitted on heron on 2026-03-03");
  }

  @Test
  void swapEnteredAtTheWrongTime_isCorrectedWithoutUndoingWhatFollowed() {
    String first = bench.add("liner");
    String second = bench.add("liner");
    bench.fit(first, HERON, "2026-03-01T08:00:00Z");
    bench.remove(first, Because.JAM, "2026-03-02T08:00:00Z");
    bench.fit(second, HERON, "2026-03-03T08:00:00Z");
    bench.remove(first, Because.JAM, "2026-03-01T20:00:00Z");
    PartChange change = bench.desk.acts().undo(first, when("2026-03-02T08:00:00Z"));
    assertThat(change.notes()).doesNotContain("takes nothing off");
    assertThat(change.part().history()).hasSize(2);
  }

  @Test
  void cleaning_restoresAShareOfAge() {
    String liner = bench.add("liner");
    assertThat(faults(() -> bench.desk.acts().clean(liner, 70, OptionalLong.empty(), NOW)))
        .containsExactly(
            "restores: found \"70.0\"; allowed: 0 to 1, the share of the part's age that the"
                + " cleaning undoes; 0 is no better than before, 1 is as good as new");
  }

  @Test
  void idOfItsOwn_isKept_andTheNextFreeOneFollowsTheHighest() {
    bench.desk.acts().add(new AddPart("liner", Optional.of("L-041"), Optional.of("ptfe")), NOW);
    assertThat(bench.add("liner")).isEqualTo("L-042");
    assertThat(bench.add("nozzle")).isEqualTo("N-001");
    assertThat(
            faults(
                () ->
                    bench
                        .desk
                        .acts()
                        .add(new AddPart("liner", Optional.of("l-041"), Optional.empty()), NOW)))
        .containsExactly(
            "id: found \"l-041\"; allowed: an id that no part has; L-041 is known already: part"
                + " show L-041");
  }
}
