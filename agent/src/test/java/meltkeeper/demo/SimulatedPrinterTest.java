package meltkeeper.demo;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import meltkeeper.protocol.JobState;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

class SimulatedPrinterTest {

  private static final long START =
      Instant.parse("2026-03-02T08:00:00Z").getEpochSecond() * 1_000_000_000L;
  private static final Duration EVERY = Duration.ofSeconds(2);

  @ParameterizedTest
  @EnumSource(Telling.class)
  void history_ofTheSameSeed_isTheSameToTheByte(Telling telling) {
    assertThat(messages(7, telling)).isEqualTo(messages(7, telling));
    assertThat(messages(7, telling)).isNotEqualTo(messages(8, telling));
  }

  private static List<Message> messages(long seed, Telling telling) {
    List<Message> messages = new ArrayList<>();
    new Day(PrinterSetup.usual("heron", seed, START), telling, EVERY)
        .publish(Duration.ofHours(1), messages::add);
    return messages;
  }

  @ParameterizedTest(name = "seed {0}")
  @ValueSource(longs = {1, 2, 3})
  void hotTime_ofThePublishedSamples_isThatOfTheSensorWithinATenthOfAPercent(long seed) {
    Day day = new Day(PrinterSetup.usual("heron", seed, START), Telling.STATUS_JSON, EVERY);
    day.publish(Duration.ofHours(24), message -> {});
    double all = day.truth().hotSeconds();
    assertThat(all).isBetween(10 * 3600.0, 15 * 3600.0);
    assertThat(day.told().seconds()).isCloseTo(all, within(0.001 * all));
    day.truth()
        .hotSecondsByBand()
        .forEach(
            (band, seconds) ->
                assertThat(day.told().secondsByBand().get(band))
                    .isCloseTo(seconds, within(0.001 * all)));
  }

  @Test
  void temperature_whileFeeding_staysNearItsTargetAndRipples() {
    SimulatedPrinter printer = new SimulatedPrinter(PrinterSetup.usual("heron", 1, START));
    printer.advance(Duration.ofMinutes(8));
    double lowest = 999;
    double highest = 0;
    for (int i = 0; i < 600; i++) {
      printer.advance(Duration.ofSeconds(1));
      lowest = Math.min(lowest, printer.state().celsius());
      highest = Math.max(highest, printer.state().celsius());
    }
    assertThat(printer.state().state()).isEqualTo(JobState.PRINTING);
    assertThat(lowest).isBetween(221.0, 224.9);
    assertThat(highest).isBetween(225.1, 229.0);
  }

  @Test
  void total_commanded_isNetOfRetractionsAndWhatWasFedIsItsHighest() {
    SimulatedPrinter printer = new SimulatedPrinter(PrinterSetup.usual("heron", 1, START));
    double highest = 0;
    boolean fell = false;
    double last = 0;
    for (int i = 0; i < 9_000; i++) {
      printer.advanceTo(START + i * SimulatedPrinter.STEP_NANOS);
      double total = printer.state().commandedMillimetres();
      fell |= total < last;
      last = total;
      highest = Math.max(highest, total);
    }
    assertThat(fell).isTrue();
    assertThat(printer.truth().fedMillimetres()).isCloseTo(highest, within(0.8));
    assertThat(highest).isBetween(500.0, 3000.0);
  }

  @Test
  void encoder_thatIsHealthy_seesAllButALittleSlip() {
    SimulatedPrinter printer = new SimulatedPrinter(PrinterSetup.usual("heron", 1, START));
    printer.advance(Duration.ofMinutes(25));
    PrinterState state = printer.state();
    assertThat(state.measuredMillimetres() / state.commandedMillimetres()).isBetween(0.98, 1.0);
  }

  @Test
  void encoder_thatIsBlind_countsEachRetractionTwiceUp() {
    PrinterSetup setup = PrinterSetup.usual("heron", 1, START).with(new Encoder(1, true));
    SimulatedPrinter printer = new SimulatedPrinter(setup);
    printer.advance(Duration.ofMinutes(25));
    PrinterState state = printer.state();
    assertThat(state.measuredMillimetres() / state.commandedMillimetres()).isBetween(1.03, 1.08);
  }

  @Test
  void clog_thatCloses_starvesTheMeltAndThenTheHeater() {
    long from = START + Duration.ofMinutes(8).toNanos();
    Trouble clog = new Trouble.Clog(from, Duration.ofMinutes(12).toNanos());
    SimulatedPrinter healthy = new SimulatedPrinter(PrinterSetup.usual("heron", 1, START));
    SimulatedPrinter jammed =
        new SimulatedPrinter(PrinterSetup.usual("heron", 1, START).having(clog));
    healthy.advance(Duration.ofMinutes(20));
    jammed.advance(Duration.ofMinutes(20));
    PrinterState before = jammed.state();
    double healthyDuty = meanDuty(healthy);
    double jammedDuty = meanDuty(jammed);
    assertThat(jammed.state().commandedMillimetres())
        .isGreaterThan(before.commandedMillimetres() + 50);
    assertThat(jammed.state().measuredMillimetres())
        .isCloseTo(before.measuredMillimetres(), within(2.0));
    assertThat(jammedDuty).isLessThan(healthyDuty - 0.03);
  }

  @Test
  void clog_thatIsCleared_letsEverythingThroughAgain() {
    long from = START + Duration.ofMinutes(8).toNanos();
    long cleared = START + Duration.ofMinutes(22).toNanos();
    Trouble clog = new Trouble.Clog(from, Duration.ofMinutes(12).toNanos(), cleared);
    SimulatedPrinter printer =
        new SimulatedPrinter(PrinterSetup.usual("heron", 1, START).having(clog));
    printer.advance(Duration.ofMinutes(22));
    PrinterState before = printer.state();
    printer.advance(Duration.ofMinutes(3));
    PrinterState after = printer.state();
    double asked = after.commandedMillimetres() - before.commandedMillimetres();
    assertThat(asked).isGreaterThan(50);
    assertThat(after.measuredMillimetres() - before.measuredMillimetres())
        .isCloseTo(asked, within(asked * 0.05));
  }

  private static double meanDuty(SimulatedPrinter printer) {
    double sum = 0;
    for (int i = 0; i < 120; i++) {
      printer.advance(Duration.ofSeconds(1));
      sum += printer.state().duty();
    }
    return sum / 120;
  }

  @Test
  void block_atOnce_letsAFewMillimetresThrough() {
    long from = START + Duration.ofMinutes(10).toNanos();
    SimulatedPrinter printer =
        new SimulatedPrinter(PrinterSetup.usual("heron", 1, START).having(new Trouble.Block(from)));
    printer.advance(Duration.ofMinutes(10));
    double before = printer.truth().deliveredMillimetres();
    printer.advance(Duration.ofMinutes(5));
    assertThat(printer.truth().deliveredMillimetres() - before).isCloseTo(3, within(0.1));
  }

  @Test
  void runout_atTheEncoder_isSeenThereFirstAndInTheMeltLater() {
    long from = START + Duration.ofMinutes(10).toNanos();
    SimulatedPrinter printer =
        new SimulatedPrinter(
            PrinterSetup.usual("heron", 1, START).having(new Trouble.Runout(from, 500)));
    printer.advance(Duration.ofMinutes(10));
    double seen = printer.state().measuredMillimetres();
    double melted = printer.truth().deliveredMillimetres();
    printer.advance(Duration.ofMinutes(1));
    assertThat(printer.state().measuredMillimetres()).isEqualTo(seen);
    assertThat(printer.truth().deliveredMillimetres()).isGreaterThan(melted + 50);
    printer.advance(Duration.ofMinutes(9));
    assertThat(printer.truth().deliveredMillimetres() - melted).isBetween(480.0, 500.0);
  }

  @Test
  void batch_thatEnds_coolsTheHotEndBeforeTheNext() {
    SimulatedPrinter printer = new SimulatedPrinter(PrinterSetup.usual("heron", 1, START));
    printer.advance(Duration.ofMinutes(40));
    assertThat(printer.state().state()).isEqualTo(JobState.IDLE);
    assertThat(printer.state().celsius()).isBetween(25.0, 80.0);
    printer.advance(Duration.ofMinutes(8));
    assertThat(printer.state().state()).isEqualTo(JobState.PRINTING);
    assertThat(printer.state().job()).isEqualTo("plant-labels-2");
  }
}
