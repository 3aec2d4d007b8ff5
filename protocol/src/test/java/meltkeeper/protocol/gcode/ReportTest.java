package meltkeeper.protocol.gcode;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.OptionalInt;
import java.util.OptionalLong;
import java.util.Random;
import meltkeeper.protocol.Payload;
import meltkeeper.protocol.Rejected.Reason;
import meltkeeper.protocol.Signal;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Expected values: RepRap dialect, common practice, no source. */
class ReportTest {

  @Test
  void okLine_withTemperatures_tellsTheHotEndsValuesOnly() {
    assertThat(values("ok T:214.9 /215.0 B:60.0 /60.0 @:54 B@:20"))
        .containsExactly(
            active(Signal.HOT_END_TARGET, 215.0),
            active(Signal.HOT_END_TEMPERATURE, 214.9),
            active(Signal.HEATER_DUTY, 54));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        " T:214.9 /215.0 B:60.0 /60.0 @:54 B@:20",
        "ok T:214.9/215.0 B:60.0/60.0 @:54 B@:20",
        "OK t:214.9 /215.0 b:60.0 /60.0 @:54 b@:20",
        "ok N12 P15 B3 T:214.9 /215.0 @:54",
        "ok 12 T: 214.9 / 215.0 @: 54",
        "okT:214.9 /215.0 @:54",
        "ok T:214.90 /215.00 (123.4) B:60.00 /60.00 (55) C:30.12 /0.00 @:54 B@:20 C@:0",
        "T:+214.9 /215.0 @:054",
      })
  void temperatureReport_inAnySpelling_tellsTheSame(String line) {
    assertThat(values(line))
        .containsExactly(
            active(Signal.HOT_END_TARGET, 215.0),
            active(Signal.HOT_END_TEMPERATURE, 214.9),
            active(Signal.HEATER_DUTY, 54));
  }

  @Test
  void severalHotEnds_besideADuplicatedT_areToldOnceEach() {
    Report.Values report =
        read("ok T:25.0 /0.0 B:60.0 /60.0 T0:214.9 /215.0 T1:25.0 /0.0" + " @:0 B@:20 @0:54 @1:0");

    assertThat(report.values())
        .containsExactly(
            of(Signal.HOT_END_TARGET, 0, 215.0),
            of(Signal.HOT_END_TEMPERATURE, 0, 214.9),
            of(Signal.HOT_END_TARGET, 1, 0.0),
            of(Signal.HOT_END_TEMPERATURE, 1, 25.0),
            of(Signal.HEATER_DUTY, 0, 54),
            of(Signal.HEATER_DUTY, 1, 0));
    assertThat(report.activeHotEnd()).hasValue(1);
  }

  @Test
  void severalHotEnds_alike_leaveOpenWhichIsAtWork() {
    assertThat(read("T:25.0 /0.0 T0:25.0 /0.0 T1:25.0 /0.0").activeHotEnd()).isEmpty();
    assertThat(read("T0:214.9 /215.0 T1:25.0 /0.0").activeHotEnd()).isEmpty();
  }

  @Test
  void waitLine_withHotEndNumber_tellsThatHotEnd() {
    assertThat(values("T:180.5 E:0 W:3")).containsExactly(of(Signal.HOT_END_TEMPERATURE, 0, 180.5));
    assertThat(values("T:180.5 E:1 W:?")).containsExactly(of(Signal.HOT_END_TEMPERATURE, 1, 180.5));
    assertThat(values("T:180.5 W:?")).containsExactly(active(Signal.HOT_END_TEMPERATURE, 180.5));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "X:110.00 Y:95.50 Z:0.30 E:1234.567 Count X:8800 Y:7640 Z:120",
        "X:110.00Y:95.50Z:0.30E:1234.567",
        "ok X:110.00 Y:95.50 Z:0.30 E:1234.567 Count X:8800 E:99",
      })
  void positionReport_withCounts_tellsTheFilamentAlone(String line) {
    assertThat(values(line)).containsExactly(active(Signal.FILAMENT_COMMANDED, 1234.567));
  }

  @Test
  void positionReport_withCountAndOkBehind_tellsTheOkToo() {
    Report.Values report = read("X:110.00 Y:95.50 Z:0.30 E:12.5 Count X:8800 Y:7640ok");

    assertThat(report.acknowledges()).isTrue();
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "ok T:214.9 /215.0 B:60.0 /60.0 @:54 B@:20ok T:215.3 /215.0 B:60.0 /60.0 @:51 B@:20",
        "ok T:214.9 /21ok T:215.3 /215.0 @:51",
        " T:214.9 /215.0 B:60 T:215.3 /215.0 B:60.0 /60.0 @:51 B@:20",
        "ok T:21\u00e9\u00f34.9 ok T:215.3 /215.0 @:51",
      })
  void mergedReports_inOneLine_tellTheLastAndCountTheOtherTorn(String line) {
    Report.Values report = read(line);

    assertThat(report.values())
        .containsExactly(
            active(Signal.HOT_END_TARGET, 215.0),
            active(Signal.HOT_END_TEMPERATURE, 215.3),
            active(Signal.HEATER_DUTY, 51));
    assertThat(report.rejected()).singleElement().matches(r -> r.reason() == Reason.TORN_LINE);
  }

  @Test
  void repeatedOk_beforeAReport_isNoSeam() {
    Report.Values report = read("ok ok T:215.3 /215.0");

    assertThat(report.values()).hasSize(2);
    assertThat(report.rejected()).isEmpty();
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "ok T:",
        "ok T:214.",
        "ok T:214.9 /",
        "ok T:214.9 /215.0 B:6",
        "ok T:214.9 /215.0 B:60.0 /6",
        "ok T:214.9 /215.0 B:60.0 /60.0 @:",
        "ok T:214.9 /215.0 B:60.0 /60.0 @",
        "ok T:214.9 /215.0 B:60.0 /60.0 @:54 B",
        "ok T:214.9 /215.0 (12",
        "ok T:214.9.9 /215.0",
        "X:110.00 Y:95.50 Z:0.30 E:1",
      })
  void tornReport_atItsEnd_tellsNothing(String line) {
    Report.Values report = read(line);

    assertThat(report.values()).isEmpty();
    assertThat(report.rejected()).singleElement().matches(r -> r.reason() == Reason.TORN_LINE);
  }

  @ParameterizedTest
  @CsvSource({
    "14.9 /215.0 B:60.0 /60.0 @:54 B@:20, TORN_LINE",
    "k T:214.9 /215.0, TORN_LINE",
    "/215.0 B:60.0 /60.0, TORN_LINE",
    "Resend:, TORN_LINE",
    "rs 12x, TORN_LINE",
    "SD printing byte 12, TORN_LINE",
    "SD printing byte 12/, TORN_LINE",
    "SD printing byte 120/12, OUT_OF_RANGE",
    "okay, UNKNOWN_LINE",
    "startled, UNKNOWN_LINE",
    "hello, UNKNOWN_LINE",
    "\u00e9\u00f3\u00fc, UNKNOWN_LINE",
    "12, UNKNOWN_LINE",
  })
  void unreadableLine_byItsKind_isRejectedWithTheReason(String line, Reason reason) {
    assertThat(report(line))
        .isInstanceOfSatisfying(
            Report.Unreadable.class,
            unreadable -> assertThat(unreadable.rejected().reason()).isEqualTo(reason));
  }

  @Test
  void integersThroughout_areWhole() {
    assertThat(values("ok T:201 /205 B:60 /60 @:5")).hasSize(3);
    assertThat(values("T:214.9 /215 B:60.2 /60")).hasSize(2);
    assertThat(values("T:214.9 /215.0 B:60 /60")).hasSize(2);
  }

  @Test
  void notANumber_inOneField_leavesTheOthers() {
    Report.Values report = read("ok T:nan /215.0 @:54");

    assertThat(report.values())
        .containsExactly(active(Signal.HOT_END_TARGET, 215.0), active(Signal.HEATER_DUTY, 54));
    assertThat(report.rejected()).singleElement().matches(r -> r.reason() == Reason.NOT_A_NUMBER);
  }

  @Test
  void hotEndNumber_aboveTheHighest_isOutOfRange() {
    Report.Values report = read("T16:20.0 /0.0");

    assertThat(report.values()).isEmpty();
    assertThat(report.rejected()).allMatch(r -> r.reason() == Reason.OUT_OF_RANGE).hasSize(2);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "wait",
        "echo:SD card ok",
        "echo: words of any kind T:1",
        "// words",
        "  ",
        "File opened: label.gco Size: 120",
        "SD card ok",
        "Error:checksum mismatch, Last Line: 11",
        "Error:Line Number is not Last Line Number+1, Last Line: 11",
      })
  void wordsWithoutMeaning_areChatter(String line) {
    assertThat(report(line)).isEqualTo(new Report.Chatter());
  }

  @Test
  void storageJob_atAByte_isToldWithItsLength() {
    assertThat(report("SD printing byte 123/4567")).isEqualTo(new Report.StorageJob(123, 4567));
    assertThat(report("SD printing byte 0/0")).isEqualTo(new Report.NoStorageJob());
    assertThat(report("Not SD printing")).isEqualTo(new Report.NoStorageJob());
    assertThat(report("Done printing file")).isEqualTo(new Report.NoStorageJob());
  }

  @Test
  void questions_ofWhoeverTalksWithThePrinter_areAnswered() {
    assertThat(report("ok").acknowledges()).isTrue();
    assertThat(report("ok T:20.1 /0.0").acknowledges()).isTrue();
    assertThat(report("ok T:20.1 /0.0").tellsTemperature()).isTrue();
    assertThat(report(" T:20.1 /0.0").acknowledges()).isFalse();
    assertThat(report("X:1.00 Y:2.00 Z:3.00 E:4.00").tellsTemperature()).isFalse();
    assertThat(report("wait").acknowledges()).isFalse();
    assertThat(report("busy: processing").isBusy()).isTrue();
    assertThat(report("echo:busy: paused for user").isBusy()).isTrue();
    assertThat(report("start").isRestart()).isTrue();
    assertThat(report("Resend: 12").resendFrom()).isEqualTo(OptionalLong.of(12));
    assertThat(report("Resend:N12").resendFrom()).isEqualTo(OptionalLong.of(12));
    assertThat(report("rs 12").resendFrom()).isEqualTo(OptionalLong.of(12));
    assertThat(report("ok").resendFrom()).isEmpty();
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "echo:Unknown command: \"M155 S2\"",
        "Unknown command: M155 S2",
        "Error:Unknown command: \"m155\"",
        "// Unknown command:\"M155\"",
      })
  void unknownCommand_repeatedByThePrinter_rejectsThatRequestAlone(String line) {
    assertThat(report(line).rejects(new Request.ReportEvery(2))).isTrue();
    assertThat(report(line).rejects(Request.Once.TEMPERATURES)).isFalse();
  }

  @Test
  void unknownCommand_ofALongerNumber_isAnother() {
    assertThat(report("Unknown command: M1140").rejects(Request.Once.POSITION)).isFalse();
  }

  @Test
  void failuresAndActions_keepTheirWords() {
    assertThat(report("Error: heater too slow ")).isEqualTo(new Report.Failure("heater too slow"));
    assertThat(report("!! stopped")).isEqualTo(new Report.Failure("stopped"));
    assertThat(report("// action:pause")).isEqualTo(new Report.Action("pause"));
    assertThat(report("//action:out_of_filament")).isEqualTo(new Report.Action("out_of_filament"));
  }

  @ParameterizedTest(name = "seed {0}")
  @ValueSource(longs = {11, 12, 13, 14, 15, 16, 17, 18, 19, 20})
  void anyBytes_asALine_neverThrowAndHoldNumbersOnly(long seed) {
    Random random = new Random(seed);
    for (int i = 0; i < 2_000; i++) {
      byte[] line = Noise.bytes(random, random.nextInt(80));
      Report report = Report.of(Payload.of(line));

      if (report instanceof Report.Values values) {
        assertThat(values.values()).noneMatch(value -> Double.isNaN(value.number()));
      }
    }
  }

  private static Report report(String line) {
    return Report.of(Payload.of(line));
  }

  private static Report.Values read(String line) {
    return (Report.Values) report(line);
  }

  private static List<Report.Value> values(String line) {
    Report.Values report = read(line);
    assertThat(report.rejected()).isEmpty();
    return report.values();
  }

  private static Report.Value active(Signal signal, double number) {
    return new Report.Value(signal, OptionalInt.empty(), number);
  }

  private static Report.Value of(Signal signal, int hotEnd, double number) {
    return new Report.Value(signal, OptionalInt.of(hotEnd), number);
  }
}
