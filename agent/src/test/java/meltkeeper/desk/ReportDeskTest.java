package meltkeeper.desk;

import static meltkeeper.desk.Bench.HERON;
import static meltkeeper.desk.Bench.IBIS;
import static meltkeeper.desk.Bench.at;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.math.BigDecimal;
import meltkeeper.part.Because;
import org.junit.jupiter.api.Test;

class ReportDeskTest {

  private final Bench bench = new Bench();

  private Report march() {
    return bench.desk.reports().report(at("2026-03-01T00:00:00Z"), at("2026-03-08T00:00:00Z"));
  }

  @Test
  void everyPrinter_isShown_withItsFacts() {
    bench.hot(HERON, "2026-02-28T22:00:00Z", 5, 215);
    Report report = march();
    assertThat(report.hotEnds()).extracting(Report.OfHotEnd::name).containsExactly("heron", "ibis");
    Report.OfHotEnd heron = report.hotEnds().get(0);
    assertThat(heron.hotHours()).isEqualByComparingTo("3");
    assertThat(heron.filamentMetres()).isEqualByComparingTo("3.6");
    assertThat(heron.total().hotSeconds()).containsEntry("215-220", new BigDecimal("10800.000"));
    assertThat(report.hotEnds().get(1).hotHours()).isZero();
  }

  @Test
  void jamAtTheHotEnd_costsPartAndLabourAndJam() {
    bench.hot(HERON, "2026-03-02T08:00:00Z", 10, 215);
    String liner = bench.add("liner");
    bench.fit(liner, HERON, "2026-03-02T08:00:00Z");
    bench.remove(liner, Because.JAM, "2026-03-02T12:00:00Z");
    Report report = march();
    Report.Swap swap = report.hotEnds().get(0).swaps().get(0);
    assertThat(swap.because()).isEqualTo("jam");
    assertThat(swap.hotHours()).isEqualByComparingTo("4");
    // Price 4.50, a quarter of an hour at 25, a jam at 18.
    assertThat(report.costs())
        .isEqualTo(
            new Report.Costs(
                new BigDecimal("4.50"),
                new BigDecimal("6.25"),
                new BigDecimal("18.00"),
                new BigDecimal("28.75")));
    assertThat(report.hotEnds().get(0).jams()).isEqualTo(1);
  }

  @Test
  void partThatGoesOnAnotherDay_costsLabourOnly() {
    String nozzle = bench.add("nozzle");
    bench.stay(nozzle, HERON, at("2026-03-02T08:00:00Z"), at("2026-03-03T08:00:00Z"));
    bench.fit(nozzle, IBIS, "2026-03-04T08:00:00Z");
    // Ten minutes at 25 an hour: 4.1666.
    assertThat(march().costs().total()).isEqualByComparingTo("4.17");
  }

  @Test
  void inspectedPart_countsAsUsedUpOnlyOnceItIsRetired() {
    String nozzle = bench.add("nozzle");
    bench.fit(nozzle, HERON, "2026-03-02T08:00:00Z");
    bench.remove(nozzle, Because.INSPECTION, "2026-03-03T08:00:00Z");
    assertThat(march().costs().parts()).isZero();
    bench.desk.acts().retire(nozzle, Bench.when("2026-03-09T08:00:00Z"), Bench.NOW);
    assertThat(march().costs().parts()).isEqualByComparingTo("12");
  }

  @Test
  void swapOutsideTheStretch_isNotCounted() {
    String liner = bench.add("liner");
    bench.fit(liner, HERON, "2026-02-02T08:00:00Z");
    bench.remove(liner, Because.JAM, "2026-02-12T08:00:00Z");
    assertThat(march().hotEnds().get(0).swaps()).isEmpty();
  }

  @Test
  void endBeforeTheBeginning_isRefused() {
    assertThatThrownBy(
            () ->
                bench.desk.reports().report(at("2026-03-08T00:00:00Z"), at("2026-03-01T00:00:00Z")))
        .hasMessageContaining("a time before the end of the report, 2026-03-01 01:00");
  }
}
