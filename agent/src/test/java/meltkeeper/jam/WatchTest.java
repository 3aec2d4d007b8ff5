package meltkeeper.jam;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import meltkeeper.jam.sim.Episode;
import meltkeeper.jam.sim.Fault;
import meltkeeper.jam.sim.Truth;
import meltkeeper.protocol.HotEnd;
import meltkeeper.protocol.JobState;
import meltkeeper.protocol.NoticeKind;
import meltkeeper.protocol.Reading;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

class WatchTest {

  private static final HotEnd HERON = HotEnd.first("heron");

  private final Bench bench = new Bench(HERON, WatchSettings.DEFAULT);

  @Test
  void healthyPrint_neverLeavesClear() {
    bench.print(7200);
    assertThat(bench.findings()).isEmpty();
    assertThat(bench.watch().outlook().level()).isEqualTo(Level.CLEAR);
    assertThat(bench.watch().outlook().evidence())
        .containsKeys(Detector.FEED_RATIO, Detector.DEAD_STOP, Detector.HEATER_BALANCE);
  }

  @Test
  void filamentThatStopsMoving_isStalledWithinThirtyMillimetres() {
    bench.print(1800);
    double before = bench.commanded();
    bench.passing(0).printUntil(Level.STALLED, 60);
    assertThat(bench.commanded() - before).isLessThan(30);
    Finding finding = bench.lastFinding();
    assertThat(finding.detector()).isEqualTo(Detector.DEAD_STOP);
    assertThat(finding.because()).isEqualTo("filament is asked for, and none moves");
    assertThat(finding.evidence()).isGreaterThanOrEqualTo(1);
    assertThat(finding.cause()).isPresent();
  }

  @Test
  void slowClog_isNarrowingWithReasonAndMinutesLongBeforeTheStall() {
    bench.print(1800);
    double share = 1;
    for (int minute = 0; minute < 20 && bench.findings().isEmpty(); minute++) {
      share -= 0.04;
      bench.passing(share).print(60);
    }
    assertThat(share).isGreaterThan(0.7);
    Finding finding = bench.lastFinding();
    assertThat(finding.level()).isEqualTo(Level.NARROWING);
    assertThat(finding.because())
        .matches("fed \\d+ % of what was asked over the last \\d+ mm; normal here is 9\\d-10\\d %");
    MinutesToStall minutes = finding.minutesToStall().orElseThrow();
    double left = (share - 0.1) / 0.04;
    assertThat(left).isBetween(minutes.low(), minutes.high());
  }

  @Test
  void jobThatEndsInAJam_isNotSaidToFeedAsUsual() {
    bench.print(1800);
    bench.passing(0.6).printUntil(Level.NARROWING, 300);
    bench.state(JobState.IDLE).print(120);
    assertThat(bench.lastFinding().level()).isEqualTo(Level.CLEAR);
    assertThat(bench.lastFinding().because()).contains("not seen to end");
  }

  @Test
  void clogThatClears_isClearAgain() {
    bench.print(1800);
    bench.passing(0.6).printUntil(Level.NARROWING, 300);
    bench.passing(1).printUntil(Level.CLEAR, 300);
    assertThat(bench.lastFinding().because()).isEqualTo("feeds as usual again, or began anew");
  }

  @Test
  void slipOnFastMovesAlone_isNarrowingWhileTheAverageLooksWell() {
    bench.print(3600);
    bench.passingWhenFast(0.85).printUntil(Level.NARROWING, 1800);
    assertThat(bench.lastFinding().detector()).isEqualTo(Detector.FAST_FEED_RATIO);
    assertThat(bench.lastFinding().because())
        .matches("on fast moves only \\d+ % of the usual feed comes through; on all moves \\d+ %");
    assertThat(bench.lastFinding().cause()).contains(Cause.PARTIAL_CLOG);
  }

  /** Any scale will do: what is usual is learned. */
  @ParameterizedTest
  @ValueSource(doubles = {0.2, 0.4, 0.8, 1.3, 2.5, 100})
  void encoderOfAnyScale_isLearned(double scale) {
    bench.encoderScale(scale).print(3600);
    assertThat(bench.findings()).isEmpty();
    bench.passing(0).printUntil(Level.STALLED, 60);
  }

  @ParameterizedTest
  @ValueSource(doubles = {0.01, 0.5, 1, 2, 3})
  void encoderOfAnyPulse_isQuietInHealthAndSeesAStop(double pulse) {
    bench.pulse(pulse).print(7200);
    assertThat(bench.findings()).isEmpty();
    bench.passing(0).printUntil(Level.STALLED, 60);
  }

  @Test
  void pauseAndFilamentChange_neverAlarm() {
    bench.print(1800);
    bench.state(JobState.PAUSED);
    for (int i = 0; i < 30; i++) {
      bench.passing(0).print(4);
      bench.passing(3).print(4);
    }
    bench.passing(1).state(JobState.PRINTING).print(1800);
    assertThat(bench.findings()).isEmpty();
  }

  @Test
  void anotherMaterial_isLearnedAnewAndTheFirstIsRemembered() {
    bench.material("PLA").print(1800);
    bench.material("TPU").passing(0.8).print(1800);
    assertThat(bench.findings()).isEmpty();
    bench.material("PLA").passing(0.8).printUntil(Level.NARROWING, 300);
  }

  @Test
  void jamSoonAfterANewMaterial_isCalledByWhatTheEncoderShowedBefore() {
    bench.material("PLA").print(1800);
    bench.material("PETG").print(60);
    bench.passing(0.6).printUntil(Level.NARROWING, 120);
    assertThat(bench.lastFinding().detector()).isIn(Detector.FEED_RATIO, Detector.FAST_FEED_RATIO);
  }

  @ParameterizedTest
  @ValueSource(ints = {120, 240, 480})
  void jamSoonAfterTheFirstStart_isNotLearnedAsSpread(int healthySeconds) {
    bench.print(healthySeconds);
    double share = 1;
    while (share > 0.5) {
      share -= 0.03;
      bench.passing(share).print(20);
    }
    bench.printUntil(Level.NARROWING, 240);
  }

  @Test
  void newTarget_rearmsAndNeverAlarmsByItself() {
    bench.print(1800);
    for (double target = 205; target < 240; target += 5) {
      bench.target(target).print(600);
    }
    assertThat(bench.findings()).isEmpty();
  }

  @Test
  void alarm_endsWhenThePrinterPauses() {
    bench.print(1800);
    bench.passing(0).printUntil(Level.STALLED, 60);
    bench.state(JobState.PAUSED).print(10);
    assertThat(bench.watch().outlook().level()).isEqualTo(Level.CLEAR);
  }

  @Test
  void runoutNotice_isStalled() {
    bench.print(60);
    bench.say(NoticeKind.RUNOUT).print(4);
    assertThat(bench.lastFinding().level()).isEqualTo(Level.STALLED);
    assertThat(bench.lastFinding().detector()).isEqualTo(Detector.NOTICE);
    assertThat(bench.lastFinding().cause()).contains(Cause.RUNOUT_OR_TANGLE);
  }

  @Test
  void runoutToldAsThePrinterPausesItself_isStalledAllTheSame() {
    bench.print(60);
    bench.state(JobState.PAUSED).feeds(false).print(2);
    bench.say(NoticeKind.RUNOUT).print(60);
    assertThat(bench.findings()).extracting(Finding::level).containsExactly(Level.STALLED);
    bench.state(JobState.PRINTING).feeds(true).print(4);
    assertThat(bench.lastFinding().level()).isEqualTo(Level.CLEAR);
  }

  @Test
  void runoutToldWhileFilamentIsChanged_isNone() {
    bench.print(60);
    bench.state(JobState.PAUSED).feeds(false).print(30);
    bench.say(NoticeKind.RUNOUT).print(30);
    bench.state(JobState.PRINTING).feeds(true).print(60);
    assertThat(bench.findings()).isEmpty();
  }

  @Test
  void heaterFault_isStalledInThePrintersOwnWords() {
    bench.print(60);
    bench.say(NoticeKind.HEATER_FAULT).print(4);
    assertThat(bench.lastFinding().level()).isEqualTo(Level.STALLED);
    assertThat(bench.lastFinding().because())
        .isEqualTo("the printer says that it stopped heating, for something is wrong there");
    assertThat(bench.lastFinding().cause()).contains(Cause.HEATER_FAULT);
  }

  @ParameterizedTest
  @EnumSource(
      value = NoticeKind.class,
      names = {"RESTARTED", "PAUSED", "RESUMED", "FILAMENT_CHANGE", "OTHER"})
  void otherNotice_neverAlarms(NoticeKind kind) {
    bench.print(600);
    bench.say(kind).print(600);
    assertThat(bench.findings()).isEmpty();
  }

  @Test
  void feedThatStopsAtOnce_whileTheHeaterStillMelts_suggestsARunout() {
    bench.print(1800);
    bench.passing(0).printUntil(Level.STALLED, 60);
    assertThat(bench.lastFinding().cause()).contains(Cause.RUNOUT_OR_TANGLE);
  }

  @Test
  void feedThatIsStoppedFromTheJobsStart_suggestsNothing() {
    bench.print(1800);
    bench.state(JobState.PAUSED).print(10);
    bench.state(JobState.PRINTING).passing(0).printUntil(Level.STALLED, 120);
    assertThat(bench.lastFinding().cause()).isEmpty();
  }

  @Test
  void slipSoonAfterAHotIdle_suggestsHeatCreep() {
    bench.print(1800);
    bench.feeds(false).print(900);
    bench.feeds(true).passing(0.6).printUntil(Level.NARROWING, 300);
    assertThat(bench.lastFinding().cause()).contains(Cause.HEAT_CREEP);
    assertThat(Cause.HEAT_CREEP.suggestion())
        .isEqualTo("perhaps heat creep: look at the heat break's fan first");
  }

  @Test
  void slipLongAfterAHotIdle_doesNotSuggestHeatCreep() {
    bench.print(1800);
    bench.feeds(false).print(900);
    bench.feeds(true).print(1200);
    bench.passing(0.6).printUntil(Level.NARROWING, 300);
    assertThat(bench.lastFinding().cause()).isNotEqualTo(Optional.of(Cause.HEAT_CREEP));
  }

  @Test
  void slipWhileTheLoadCollapses_suggestsGrinding() {
    bench.load(1).print(3600);
    bench.load(0.4).passing(0.5).printUntil(Level.NARROWING, 300);
    assertThat(bench.lastFinding().cause()).contains(Cause.GRINDING);
  }

  @Test
  void partSwap_beginsAnew_unlessItHasSince() {
    bench.print(1800);
    bench.passing(0.6).printUntil(Level.NARROWING, 300);
    bench.watch().partSwapped(500_000_000_000L);
    bench.print(2);
    assertThat(bench.watch().outlook().level()).isEqualTo(Level.NARROWING);
    bench.watch().partSwapped(2_800_000_000_000L);
    bench.passing(1).print(4);
    assertThat(bench.watch().outlook().level()).isEqualTo(Level.CLEAR);
    assertThat(bench.watch().outlook().evidence().get(Detector.FEED_RATIO)).isZero();
  }

  @Test
  void loadThatRises_isNarrowingBeforeAnythingSlips() {
    bench.load(1).print(3600);
    assertThat(bench.findings()).isEmpty();
    bench.load(2.5).printUntil(Level.NARROWING, 600);
    assertThat(bench.lastFinding().detector()).isEqualTo(Detector.FEED_LOAD);
  }

  @Test
  void temperatureAlone_isBlindAndNamesTheCure() {
    bench.without("commanded").without("measured").without("duty").print(300);
    assertThat(bench.watch().outlook().level()).isEqualTo(Level.BLIND);
    assertThat(bench.lastFinding().because())
        .isEqualTo(
            "the filament asked for is not told: map filament-commanded, the running total in"
                + " millimetres, and filament-measured or heater-duty");
    assertThat(bench.watch().blindNanos()).isBetween(200_000_000_000L, 300_000_000_000L);
  }

  @Test
  void commandedFilamentAlone_isBlindAndNamesTheCure() {
    bench.without("measured").without("duty").print(300);
    assertThat(bench.lastFinding().because())
        .isEqualTo(
            "neither measured filament nor heater duty is told: map filament-measured if there is"
                + " an encoder, else heater-duty");
  }

  @Test
  void feedTooSlowForTheHeater_isBlindAndNamesTheCure() {
    bench.without("measured").pace(0.03).print(7200);
    assertThat(bench.watch().outlook().level()).isEqualTo(Level.BLIND);
    assertThat(bench.lastFinding().because())
        .isEqualTo(
            "feeds too slowly to see a jam from the heater: map filament-measured if there is an"
                + " encoder, or feed-load");
    bench.pace(1).printUntil(Level.CLEAR, 7200);
  }

  @Test
  void feedTooSlowForTheHeater_besideAnEncoder_isNotBlind() {
    bench.pace(0.03).print(7200);
    assertThat(bench.findings()).isEmpty();
  }

  @Test
  void coldPrinter_isNotBlind() {
    bench.target(0).celsius(25).without("commanded").without("measured").print(600);
    assertThat(bench.findings()).isEmpty();
  }

  /** Physics that the watch does not assume; the heater alone, after an hour of health. */
  @Test
  void fullBlockWithoutEncoder_isSeenByTheHeater() {
    Episode episode = new Episode(400_010, Fault.BLOCK, 2);
    Watch watch = Watch.opened(Episode.WREN, WatchSettings.DEFAULT);
    List<Finding> findings = new ArrayList<>();
    Truth truth =
        episode.run(
            reading -> {
              if (!(reading instanceof Reading.FilamentMeasured)) {
                watch.step(reading).ifPresent(findings::add);
              }
            });
    assertThat(findings).isNotEmpty();
    Finding first = findings.get(0);
    assertThat(first.detector()).isEqualTo(Detector.HEATER_BALANCE);
    assertThat(first.atNanos() / 1e9).isBetween(truth.onsetSeconds(), truth.onsetSeconds() + 360);
  }

  @Test
  void stopWithoutEncoder_isNarrowingAndThenStalledWhenTheHeaterIsDecisive() {
    bench.without("measured").print(4 * 3600);
    assertThat(bench.findings()).isEmpty();
    bench.passing(0).printUntil(Level.STALLED, 600);
    assertThat(bench.findings())
        .extracting(Finding::level)
        .containsExactly(Level.NARROWING, Level.STALLED);
    assertThat(bench.lastFinding().detector()).isEqualTo(Detector.HEATER_BALANCE);
  }

  @Test
  void settings_outOfRange_areRefusedWithWhatIsAllowed() {
    assertThatThrownBy(() -> new WatchSettings(0, 150, 40, false))
        .hasMessage("0.0 is not 1 to 1000000 h");
    assertThatThrownBy(() -> new WatchSettings(1000, Double.NaN, 40, false))
        .hasMessage("NaN is not 0 to 600 °C");
    assertThatThrownBy(() -> new WatchSettings(1000, 150, 0, false))
        .hasMessage("0.0 is not above 0, at most 10000 W");
  }
}
