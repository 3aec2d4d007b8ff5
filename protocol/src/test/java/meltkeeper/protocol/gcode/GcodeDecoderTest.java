package meltkeeper.protocol.gcode;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.function.Consumer;
import java.util.stream.Stream;
import meltkeeper.protocol.Arrival;
import meltkeeper.protocol.HotEnd;
import meltkeeper.protocol.JobState;
import meltkeeper.protocol.NoticeKind;
import meltkeeper.protocol.Origin;
import meltkeeper.protocol.Origin.Direction;
import meltkeeper.protocol.Outlet;
import meltkeeper.protocol.Payload;
import meltkeeper.protocol.Reading;
import meltkeeper.protocol.Received;
import meltkeeper.protocol.Rejected;
import meltkeeper.protocol.Rejected.Reason;
import meltkeeper.protocol.Sample;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Expected readings: RepRap dialect, common practice, no source. */
class GcodeDecoderTest {

  private static final long NOON = 1_772_452_800_000_000_000L;

  private final Sample heron = Sample.arrived(HotEnd.first("heron"), NOON);
  private final Sample second = Sample.arrived(new HotEnd("heron", 1), NOON);
  private final GcodeDecoder decoder = new GcodeDecoder("heron");
  private final Heard heard = new Heard();

  @Test
  void temperatureReport_fromThePrinter_givesReadingsInOrderOnOneSample() {
    in("ok T:214.9 /215.0 B:60.0 /60.0 @:54 B@:20");

    assertThat(heard.readings)
        .containsExactly(
            new Reading.HeaterDuty(heron, 54.0 / 127),
            new Reading.HotEndTarget(heron, 215.0),
            new Reading.HotEndTemperature(heron, 214.9));
    assertThat(heard.rejected).isEmpty();
  }

  @Test
  void severalHotEnds_inOneReport_giveEachItsReadings() {
    in("T:214.9 /215.0 T0:214.9 /215.0 T1:25.0 /0.0 @:54 @0:54 @1:0");

    assertThat(heard.readings)
        .containsExactly(
            new Reading.HeaterDuty(heron, 54.0 / 127),
            new Reading.HeaterDuty(second, 0),
            new Reading.HotEndTarget(heron, 215.0),
            new Reading.HotEndTarget(second, 0),
            new Reading.HotEndTemperature(heron, 214.9),
            new Reading.HotEndTemperature(second, 25.0));
  }

  @Test
  void fullDuty_ofAnotherScale_isAskedForByTheConstructor() {
    new GcodeDecoder("heron", 255).decode(received(Direction.IN, "T:20.0 /0.0 @:255"), heard);

    assertThat(heard.readings).contains(new Reading.HeaterDuty(heron, 1));
    assertThatThrownBy(() -> new GcodeDecoder("heron", Double.NaN))
        .hasMessage("NaN is not the duty at full power; allowed: a number above 0, such as 127");
  }

  @ParameterizedTest
  @CsvSource({
    "T:9999 /215.0 @:54, OUT_OF_RANGE",
    "T:-60.0 /215.0 @:54, OUT_OF_RANGE",
    "T:inf /215.0 @:54, OUT_OF_RANGE",
    "T:nan /215.0 @:54, NOT_A_NUMBER",
  })
  void impossibleTemperature_isRejectedAndTheRestTold(String line, Reason reason) {
    in(line);

    assertThat(heard.readings)
        .containsExactly(
            new Reading.HeaterDuty(heron, 54.0 / 127), new Reading.HotEndTarget(heron, 215.0));
    assertThat(heard.reasons()).containsExactly(reason);
  }

  @Test
  void duty_aboveFull_isOutOfRange() {
    in("T:20.0 /0.0 @:200");

    assertThat(heard.reasons()).containsExactly(Reason.OUT_OF_RANGE);
    assertThat(heard.rejected.get(0).detail())
        .isEqualTo("heater-duty " + 200.0 / 127 + "; allowed: 0 to 1");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "ok",
        "ok N12 P15 B3",
        "wait",
        "busy: processing",
        "echo:busy: paused for user",
        "echo:words",
        "// words",
        "",
        "Resend: 4",
        "Error:checksum mismatch, Last Line: 3",
        "echo:Unknown command: \"M155 S2\"",
        "B:60.0 /60.0 B@:20",
        "X:1.00 Y:2.00 Z:3.00"
      })
  void lineWithNothingForUs_yieldsNeitherReadingNorRejection(String line) {
    in(line);

    assertThat(heard.readings).isEmpty();
    assertThat(heard.rejected).isEmpty();
  }

  @Test
  void ourOwnRequests_echoedAsSent_yieldNothing() {
    Stream.of(
            Request.Once.TEMPERATURES,
            Request.Once.PROGRESS,
            Request.Once.POSITION,
            new Request.ReportEvery(2))
        .forEach(
            request -> {
              out(request.text());
              out(new String(request.bytes(), StandardCharsets.US_ASCII));
            });

    assertThat(heard.readings).isEmpty();
    assertThat(heard.rejected).isEmpty();
  }

  @ParameterizedTest
  @CsvSource({
    "IN, hello, UNKNOWN_LINE",
    "IN, 14.9 /215.0 B:60.0 /60.0, TORN_LINE",
    "OUT, N1 G1 X1*3, BAD_CHECKSUM",
    "OUT, HELLO, UNKNOWN_LINE",
    "OUT, G1 X1 E2G1 X3 E4, TORN_LINE",
    "OUT, G1 X#3, NOT_A_NUMBER",
  })
  void lineThatCannotBeRead_isRejectedWithItsReason(Direction direction, String line, Reason why) {
    decoder.decode(received(direction, line), heard);

    assertThat(heard.readings).isEmpty();
    assertThat(heard.reasons()).containsExactly(why);
  }

  @Test
  void storageJob_isPrintingWithItsProgress() {
    in("SD printing byte 25/100");
    in("Not SD printing");

    assertThat(heard.readings)
        .containsExactly(
            new Reading.JobStatus(heron, JobState.PRINTING),
            new Reading.Progress(heron, 0.25),
            new Reading.JobStatus(heron, JobState.IDLE));
  }

  @Test
  void storageIdle_whileTheJobComesOverTheWire_saysNothing() {
    out("M83");
    out("G1 X1 E1");
    heard.readings.clear();
    in("Not SD printing");

    assertThat(heard.readings).isEmpty();
  }

  @Test
  void restart_isToldForEveryHotEndSeen() {
    in("T0:214.9 /215.0 T1:25.0 /0.0");
    heard.readings.clear();
    in("start");

    String words = "the printer's controller started anew";
    assertThat(heard.readings)
        .containsExactly(
            new Reading.JobStatus(heron, JobState.IDLE),
            new Reading.JobStatus(second, JobState.IDLE),
            new Reading.Notice(heron, NoticeKind.RESTARTED, words),
            new Reading.Notice(second, NoticeKind.RESTARTED, words));
  }

  @ParameterizedTest
  @CsvSource({
    "// action:pause, PAUSED, PAUSED",
    "// action:paused, PAUSED, PAUSED",
    "//action:resume, RESUMED, PRINTING",
    "// action:resumed, RESUMED, PRINTING",
    "// action:cancel, OTHER, IDLE",
  })
  void action_onTheJob_tellsStateAndNotice(String line, NoticeKind kind, JobState state) {
    in(line);

    assertThat(heard.readings)
        .containsExactly(
            new Reading.JobStatus(heron, state),
            new Reading.Notice(heron, kind, line.substring(line.indexOf(':') + 1)));
  }

  @ParameterizedTest
  @CsvSource({
    "Error:Heating failed, HEATER_FAULT, Heating failed",
    "!! thermal runaway, HEATER_FAULT, thermal runaway",
    "Error:filament runout, RUNOUT, filament runout",
    "// action:out_of_filament, RUNOUT, out_of_filament",
    "Error:probe, OTHER, probe",
    "// action:notification Layer 3, OTHER, notification Layer 3",
  })
  void trouble_inThePrintersWords_isNoticed(String line, NoticeKind kind, String text) {
    in(line);

    assertThat(heard.readings).containsExactly(new Reading.Notice(heron, kind, text));
  }

  @Test
  void positionReport_asLongAsNoLineFed_isTheCommandedFilament() {
    in("X:1.00 Y:2.00 Z:0.30 E:120.50 Count X:80 Y:160 Z:120");
    out("G28");
    in("X:1.00 Y:2.00 Z:0.30 E:121.75 Count X:80 Y:160 Z:120");

    assertThat(heard.readings)
        .containsExactly(
            new Reading.FilamentCommanded(heron, 120.5),
            new Reading.FilamentCommanded(heron, 121.75));
  }

  @Test
  void positionReport_onceALineFed_isLeftToTheLines() {
    out("M83");
    out("G1 X1 E1.5");
    in("X:1.00 Y:2.00 Z:0.30 E:99.00 Count X:80 Y:160 Z:120");

    assertThat(heard.readings)
        .containsExactly(
            new Reading.FilamentCommanded(heron, 0), new Reading.FilamentCommanded(heron, 1.5));
  }

  @Test
  void hotEndAtWork_asTheReportShowsIt_ownsWhatIsNotNumbered() {
    in("T:200.0 /200.0 T0:25.0 /0.0 T1:200.0 /200.0 @:64");
    heard.readings.clear();
    in("X:1.00 Y:2.00 Z:0.30 E:7.00");
    in("T:201.0 /200.0");

    assertThat(heard.readings)
        .containsExactly(
            new Reading.FilamentCommanded(second, 7),
            new Reading.HotEndTarget(second, 200),
            new Reading.HotEndTemperature(second, 201));
  }

  @Test
  void hotEndAtWork_asALineChoseIt_ownsWhatIsNotNumbered() {
    out("T1");
    in("T:201.0 /200.0");

    assertThat(heard.readings)
        .containsExactly(
            new Reading.HotEndTarget(second, 200), new Reading.HotEndTemperature(second, 201));
  }

  @Test
  void linesSentAgain_atThePrintersRequest_countOnce() {
    Stream.of("N0 M110", "N1 M83", "N2 G1 X1 E1", "N3 G1 X2 E1").forEach(this::outWithChecksum);
    out("N4 G1 X3 E1*1");
    in("Error:checksum mismatch, Last Line: 3");
    in("Resend: 3");
    in("ok");
    Stream.of("N3 G1 X2 E1", "N4 G1 X3 E1").forEach(this::outWithChecksum);

    assertThat(heard.readings)
        .endsWith(new Reading.FilamentCommanded(heron, 3))
        .doesNotContain(new Reading.FilamentCommanded(heron, 4));
    assertThat(heard.reasons()).containsExactly(Reason.BAD_CHECKSUM);
  }

  @Test
  void line_kept_isToldAsKept() {
    Received kept =
        new Received(
            new Origin.Line("heron", Direction.IN), Payload.of("T:20.0"), Arrival.at(NOON), true);
    decoder.decode(kept, heard);

    assertThat(heard.readings)
        .containsExactly(new Reading.HotEndTemperature(heron.asRetained(), 20));
  }

  @Test
  void message_thatIsNoLine_isABugOfTheCaller() {
    Received message =
        Received.fresh(new Origin.Topic("shop", "plant"), Payload.of("ok"), Arrival.at(NOON));

    assertThatThrownBy(() -> decoder.decode(message, heard))
        .hasMessage("topic plant on broker shop is no line's origin");
  }

  @ParameterizedTest(name = "seed {0}")
  @ValueSource(longs = {91, 92, 93, 94, 95, 96, 97, 98, 99, 100})
  void anyBytes_inAnyChunking_neverThrowAndTellTheSame(long seed) {
    Random random = new Random(seed);
    byte[] noise = Noise.bytes(random, 30_000);
    Heard whole = new Heard();
    new LineSplitter(64).feed(noise, new Wire(new GcodeDecoder("heron"), whole));

    Heard chunked = new Heard();
    Wire wire = new Wire(new GcodeDecoder("heron"), chunked);
    LineSplitter splitter = new LineSplitter(64);
    for (int at = 0; at < noise.length; ) {
      int to = Math.min(noise.length, at + random.nextInt(30));
      splitter.feed(noise, at, to, wire);
      at = to;
    }

    assertThat(chunked.readings).isEqualTo(whole.readings).isNotEmpty();
    assertThat(chunked.rejected).isEqualTo(whole.rejected).isNotEmpty();
  }

  private void in(String line) {
    decoder.decode(received(Direction.IN, line), heard);
  }

  private void out(String line) {
    decoder.decode(received(Direction.OUT, line), heard);
  }

  private void outWithChecksum(String line) {
    out(line + "*" + CommandLineTest.xor(line));
  }

  private static Received received(Direction direction, String line) {
    return received(direction, Payload.of(line));
  }

  private static Received received(Direction direction, Payload line) {
    return Received.fresh(new Origin.Line("heron", direction), line, Arrival.at(NOON));
  }

  /** Gives every line to a decoder in both directions. */
  private record Wire(GcodeDecoder decoder, Heard heard) implements Consumer<Payload> {
    @Override
    public void accept(Payload line) {
      decoder.decode(received(Direction.IN, line), heard);
      decoder.decode(received(Direction.OUT, line), heard);
    }
  }

  private static final class Heard implements Outlet {
    final List<Reading> readings = new ArrayList<>();
    final List<Rejected> rejected = new ArrayList<>();

    List<Reason> reasons() {
      return rejected.stream().map(Rejected::reason).toList();
    }

    @Override
    public void reading(Reading reading) {
      readings.add(reading);
    }

    @Override
    public void rejected(Rejected why) {
      rejected.add(why);
    }
  }
}
