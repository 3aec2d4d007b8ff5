package meltkeeper.desk;

import static meltkeeper.desk.Bench.HERON;
import static meltkeeper.desk.Bench.IBIS;
import static meltkeeper.desk.Bench.NOW;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Optional;
import java.util.OptionalLong;
import meltkeeper.part.Because;
import meltkeeper.protocol.HotEnd;
import org.junit.jupiter.api.Test;

/** Swaps in one go, whose fault a jam was, and taking either back. */
final class SwapActsTest {

  private final Bench bench = new Bench();

  private PartChange swap(HotEnd hotEnd, Optional<String> part, String at) {
    return bench.desk.swaps().swap(swapOf(hotEnd, "liner", part, at), NOW);
  }

  private static SwapParts swapOf(HotEnd hotEnd, String kind, Optional<String> part, String at) {
    return new SwapParts(
        hotEnd.printer(), hotEnd.index(), kind, part, Because.JAM, false, Bench.when(at));
  }

  @Test
  void swap_movesLaterHours_fromTheOldPartToTheNew() {
    bench.hot(HERON, "2026-03-10T00:00:00Z", 10, 225);
    String old = bench.add("liner");
    bench.fit(old, HERON, "2026-03-09T00:00:00Z");

    PartChange change = swap(HERON, Optional.empty(), "2026-03-10T04:00:00Z");

    String fresh = change.part().line().id();
    assertThat(fresh).isNotEqualTo(old);
    assertThat(bench.hours(old)).isCloseTo(4, within(1e-9));
    assertThat(bench.hours(fresh)).isCloseTo(6, within(1e-9));
    assertThat(bench.desk.parts().part(old).line().ending()).isEqualTo("jam");
    assertThat(change.done()).contains(old + " was taken off", fresh + " was fitted on heron");
  }

  @Test
  void swap_takenBack_leavesEverythingAsBefore_andTheNewPartOnTheShelf() {
    bench.hot(HERON, "2026-03-10T00:00:00Z", 10, 225);
    String old = bench.add("liner");
    bench.fit(old, HERON, "2026-03-09T00:00:00Z");
    PartAnswer before = bench.desk.parts().part(old);
    PartChange change = swap(HERON, Optional.empty(), "2026-03-10T04:00:00Z");

    bench.desk.swaps().takeBack(change.undo());

    assertThat(bench.desk.parts().part(old)).isEqualTo(before);
    assertThat(bench.desk.parts().part(change.part().line().id()).line().ending())
        .isEqualTo("on-shelf");
  }

  @Test
  void swap_takenBackAfterMoreHappened_isRefused() {
    String old = bench.add("liner");
    bench.fit(old, HERON, "2026-03-09T00:00:00Z");
    PartChange change = swap(HERON, Optional.empty(), "2026-03-10T04:00:00Z");
    bench.remove(change.part().line().id(), Because.PRECAUTION, "2026-03-10T05:00:00Z");

    assertThatThrownBy(() -> bench.desk.swaps().takeBack(change.undo()))
        .isInstanceOf(RefusedException.class)
        .hasMessageContaining("nothing happened since")
        .hasMessageContaining("part undo");
  }

  @Test
  void swap_onAnEmptyHotEnd_fitsOnly() {
    PartChange change = swap(IBIS, Optional.empty(), "2026-03-10T04:00:00Z");

    assertThat(change.done()).doesNotContain("taken off").contains("was fitted on ibis");
    assertThat(change.undo().before()).isEmpty();
  }

  @Test
  void swap_withAPartFromTheShelf_takesThatOne() {
    String shelf = bench.add("liner");

    assertThat(swap(HERON, Optional.of(shelf), "2026-03-10T04:00:00Z").part().line().id())
        .isEqualTo(shelf);
  }

  @Test
  void swap_withEverythingWrong_tellsEveryFault_andChangesNothing() {
    long revision = bench.store.revision();

    assertThatThrownBy(
            () ->
                bench
                    .desk
                    .swaps()
                    .swap(
                        swapOf(
                            HotEnd.first("hern"),
                            "lner",
                            Optional.of("L-99"),
                            "2027-01-01T00:00:00Z"),
                        NOW))
        .isInstanceOf(RefusedException.class)
        .hasMessageContaining("did you mean heron?")
        .hasMessageContaining("lner")
        .hasMessageContaining("L-99")
        .hasMessageContaining("2027");
    assertThat(bench.store.revision()).isEqualTo(revision);
  }

  @Test
  void swap_withAPartOfAnotherKind_isRefused() {
    String nozzle = bench.add("nozzle");

    assertThatThrownBy(() -> swap(HERON, Optional.of(nozzle), "2026-03-10T04:00:00Z"))
        .isInstanceOf(RefusedException.class)
        .hasMessageContaining("a liner")
        .hasMessageContaining(nozzle + " is a nozzle");
  }

  @Test
  void blame_elsewhere_excusesThePart_andBackAgain() {
    String id = bench.add("liner");
    bench.fit(id, HERON, "2026-03-09T00:00:00Z");
    bench.remove(id, Because.JAM, "2026-03-10T04:00:00Z");

    bench.desk.swaps().blame(id, true, OptionalLong.empty());
    assertThat(bench.desk.parts().part(id).line().ending()).isEqualTo("excused");

    bench.desk.swaps().blame(id, false, OptionalLong.empty());
    assertThat(bench.desk.parts().part(id).line().ending()).isEqualTo("jam");
  }

  @Test
  void blame_ofAPartThatNeverFailed_isRefused() {
    String id = bench.add("liner");

    assertThatThrownBy(() -> bench.desk.swaps().blame(id, true, OptionalLong.empty()))
        .isInstanceOf(RefusedException.class)
        .hasMessageContaining("came off because of a jam or wear");
  }
}
