package meltkeeper.protocol.mapping;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import meltkeeper.protocol.HotEnd;
import meltkeeper.protocol.JobState;
import meltkeeper.protocol.NoticeKind;
import meltkeeper.protocol.Reading;
import meltkeeper.protocol.Rejected;
import meltkeeper.protocol.Rejected.Reason;
import meltkeeper.protocol.Sample;
import meltkeeper.protocol.Signal;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What becomes of one payload: values, words and times, and what is wrong with them. */
class PayloadReadingTest {

  private static final String TOPIC = "plant/heron/status";
  private static final String PLACE = "topic plant/heron/status on broker shop: ";
  private static final Sample ARRIVED = Sample.arrived(HotEnd.first("heron"), Heard.ARRIVED);

  private static final MappingDecoder TEMPERATURE =
      Heard.json(Optional.empty(), Heard.plain(Signal.HOT_END_TEMPERATURE, "/t"));

  private static Heard temperature(String json) {
    return Heard.of(TEMPERATURE, TOPIC, "{\"t\":" + json + "}");
  }

  @ParameterizedTest
  @CsvSource(
      quoteCharacter = '`',
      value = {
        "214.9, 214.9",
        "215, 215",
        "-50, -50",
        "600, 600",
        "2.149E2, 214.9",
        "\"214.9\", 214.9",
        "\" +214.9 \", 214.9",
        "\".5\", 0.5",
      })
  void number_alsoAsAString_isRead(String json, double celsius) {
    assertThat(temperature(json).readings)
        .containsExactly(new Reading.HotEndTemperature(ARRIVED, celsius));
  }

  @ParameterizedTest
  @ValueSource(strings = {"{}", "{\"t\":null}", "{\"u\":1}", "[]", "5", "null", "{\"t\":null} "})
  void fieldThatIsMissingOrNull_isNeitherToldNorRefused(String json) {
    Heard heard = Heard.of(TEMPERATURE, TOPIC, json);

    assertThat(heard.readings).isEmpty();
    assertThat(heard.rejected).isEmpty();
  }

  @ParameterizedTest
  @CsvSource(
      quoteCharacter = '`',
      delimiter = '|',
      value = {
        "\"warm\"|NOT_A_NUMBER|found \"warm\"; allowed: a number",
        "\"\"|NOT_A_NUMBER|found \"\"; allowed: a number",
        "\"214,9\"|NOT_A_NUMBER|found \"214,9\"; allowed: a number",
        "\"NaN\"|NOT_A_NUMBER|found \"NaN\"; allowed: a number",
        "\"Infinity\"|NOT_A_NUMBER|found \"Infinity\"; allowed: a number",
        "\"0x1p3\"|NOT_A_NUMBER|found \"0x1p3\"; allowed: a number",
        "NaN|NOT_A_NUMBER|found \"NaN\"; allowed: a number",
        "true|NOT_A_NUMBER|found \"true\"; allowed: a number",
        "{\"x\":1}|NOT_A_NUMBER|found \"an object\"; allowed: a number",
        "[214.9]|NOT_A_NUMBER|found \"a list\"; allowed: a number",
        "Infinity|OUT_OF_RANGE|found \"Infinity\"; allowed: -50 to 600 degrees Celsius",
        "1e999|OUT_OF_RANGE|found \"Infinity\"; allowed: -50 to 600 degrees Celsius",
        "600.5|OUT_OF_RANGE|found \"600.5\"; allowed: -50 to 600 degrees Celsius",
        "-51|OUT_OF_RANGE|found \"-51.0\"; allowed: -50 to 600 degrees Celsius",
      })
  void value_thatCannotBe_isRefusedAloneByReason(String json, Reason reason, String words) {
    MappingDecoder decoder =
        Heard.json(
            Optional.empty(),
            Heard.plain(Signal.HOT_END_TEMPERATURE, "/t"),
            Heard.plain(Signal.HOT_END_TARGET, "/s"));

    Heard heard = Heard.of(decoder, TOPIC, "{\"t\":" + json + ",\"s\":215}");

    assertThat(heard.rejected)
        .containsExactly(new Rejected(reason, PLACE + "hot-end-temperature: " + words));
    assertThat(heard.readings).containsExactly(new Reading.HotEndTarget(ARRIVED, 215));
  }

  @Test
  void scaleAndOffset_giveValueTimesScalePlusOffset() {
    MappingDecoder decoder =
        Heard.json(
            Optional.empty(),
            Heard.scaled(Signal.HEATER_DUTY, "/pwm", 0.0078740157, 0),
            Heard.scaled(Signal.HOT_END_TEMPERATURE, "/kelvin", 1, -273.15));

    Heard heard = Heard.of(decoder, TOPIC, "{\"pwm\":127,\"kelvin\":\"488.15\"}");

    // By definition 0 °C is 273.15 K; 127 · 0.0078740157 = 0.9999999939. Tolerance: rounding.
    assertThat(((Reading.HeaterDuty) heard.readings.get(0)).fraction())
        .isCloseTo(0.9999999939, within(1e-12));
    assertThat(((Reading.HotEndTemperature) heard.readings.get(1)).celsius())
        .isCloseTo(215, within(1e-12));
  }

  @Test
  void scaledValue_outOfRange_isToldAsFoundAndAsItCounts() {
    MappingDecoder decoder = Heard.json(Optional.empty(), Heard.scaled(Signal.FAN, "/fan", 0.5, 1));

    assertThat(Heard.of(decoder, TOPIC, "{\"fan\":4}").rejected)
        .containsExactly(
            new Rejected(
                Reason.OUT_OF_RANGE,
                PLACE + "fan: found \"4.0\"; allowed: 0 to 1; scale and offset make it 3.0"));
  }

  @ParameterizedTest
  @CsvSource({
    "'\"RUN\"', PRINTING",
    "'\"run\"', PAUSED",
    "'\"Rest\"', IDLE",
    "true, PRINTING",
    "7, PAUSED",
  })
  void word_isTakenAsWrittenFirstAndThenInAnyCase(String json, JobState state) {
    MappingDecoder decoder =
        Heard.json(
            Optional.empty(),
            Heard.words(
                "/state",
                Map.of(
                    "RUN", JobState.PRINTING,
                    "run", JobState.PAUSED,
                    "REST", JobState.IDLE,
                    "true", JobState.PRINTING,
                    "7", JobState.PAUSED)));

    assertThat(Heard.of(decoder, TOPIC, "{\"state\":" + json + "}").readings)
        .containsExactly(new Reading.JobStatus(ARRIVED, state));
  }

  @Test
  void wordUnknown_isRefusedWithTheWordsAllowed() {
    MappingDecoder decoder =
        Heard.json(
            Optional.empty(),
            Heard.words("/state", Map.of("RUN", JobState.PRINTING, "REST", JobState.IDLE)));

    assertThat(Heard.of(decoder, TOPIC, "{\"state\":\"printing\"}").rejected)
        .containsExactly(
            new Rejected(
                Reason.NOT_A_NUMBER, PLACE + "job-state: found \"printing\"; allowed: REST, RUN"));
  }

  @Test
  void jobState_withoutWords_knowsOurOwn() {
    MappingDecoder decoder = Heard.json(Optional.empty(), Heard.plain(Signal.JOB_STATE, "/s"));

    for (JobState state : JobState.values()) {
      String json = "{\"s\":\"" + state.word() + "\"}";
      assertThat(Heard.of(decoder, TOPIC, json).readings)
          .containsExactly(new Reading.JobStatus(ARRIVED, state));
    }
    assertThat(Heard.of(decoder, TOPIC, "{\"s\":\"busy\"}").rejected.get(0).detail())
        .endsWith("found \"busy\"; allowed: idle, paused, printing");
  }

  @Test
  void texts_areTakenAsTheyStand() {
    MappingDecoder decoder =
        Heard.json(
            Optional.empty(),
            Heard.plain(Signal.JOB, "/job"),
            Heard.plain(Signal.MATERIAL, "/material"),
            Heard.plain(Signal.NOTICE, "/say"));

    Heard heard =
        Heard.of(decoder, TOPIC, "{\"job\":17.50,\"material\":\" PETG é\",\"say\":\"lid open\"}");

    assertThat(heard.readings)
        .containsExactly(
            new Reading.Job(ARRIVED, "17.50"),
            new Reading.Material(ARRIVED, " PETG é"),
            new Reading.Notice(ARRIVED, NoticeKind.OTHER, "lid open"));
  }

  @Test
  void emptyTexts_endAJobButAreNoNotice() {
    MappingDecoder decoder =
        Heard.json(
            Optional.empty(), Heard.plain(Signal.JOB, "/job"), Heard.plain(Signal.NOTICE, "/say"));

    assertThat(Heard.of(decoder, TOPIC, "{\"job\":\"\",\"say\":\"\"}").readings)
        .containsExactly(new Reading.Job(ARRIVED, ""));
  }

  @Test
  void text_overItsLimit_isTooLong() {
    MappingDecoder decoder = Heard.json(Optional.empty(), Heard.plain(Signal.JOB, "/job"));

    String fits = "x".repeat(Cell.MAX_TEXT);
    assertThat(Heard.of(decoder, TOPIC, "{\"job\":\"" + fits + "\"}").readings)
        .containsExactly(new Reading.Job(ARRIVED, fits));
    assertThat(Heard.of(decoder, TOPIC, "{\"job\":\"" + fits + "x\"}").reasons())
        .containsExactly(Reason.TOO_LONG);
    assertThat(Heard.of(decoder, TOPIC, "{\"job\":{}}").reasons())
        .containsExactly(Reason.NOT_A_NUMBER);
  }

  @Test
  void oneValue_readByTwoRules_servesBoth() {
    MappingDecoder decoder =
        Heard.json(
            Heard.time("/at", TimeFormat.EPOCH_SECONDS),
            Heard.plain(Signal.JOB, "/at"),
            Heard.plain(Signal.FEED_LOAD, "/at"),
            Heard.plain(Signal.MATERIAL, "/n"),
            Heard.plain(Signal.PROGRESS, "/n"));

    Sample own = Sample.timed(HotEnd.first("heron"), 1_500_000_000L, Heard.ARRIVED);
    assertThat(Heard.of(decoder, TOPIC, "{\"at\":1.50,\"n\":0.5}").readings)
        .containsExactly(
            new Reading.Job(own, "1.50"),
            new Reading.Material(own, "0.5"),
            new Reading.Progress(own, 0.5),
            new Reading.FeedLoad(own, 1.5));
  }

  @ParameterizedTest
  @CsvSource(
      quoteCharacter = '`',
      delimiter = '|',
      value = {
        "{\"t\":20}|NOT_A_NUMBER|nothing",
        "{\"t\":20,\"at\":null}|NOT_A_NUMBER|nothing",
        "{\"t\":20,\"at\":\"noon\"}|NOT_A_NUMBER|noon",
        "{\"t\":20,\"at\":17}|NOT_A_NUMBER|17",
        "{\"t\":20,\"at\":[]}|NOT_A_NUMBER|a list",
        "{\"t\":20,\"at\":\"1969-01-01T00:00:00Z\"}|OUT_OF_RANGE|1969-01-01T00:00:00Z",
        "{\"t\":\"warm\",\"at\":\"noon\"}|NOT_A_NUMBER|noon",
      })
  void messageWithoutItsMappedTime_tellsNothingElse(String json, Reason reason, String found) {
    MappingDecoder decoder =
        Heard.json(
            Heard.time("/at", TimeFormat.ISO), Heard.plain(Signal.HOT_END_TEMPERATURE, "/t"));

    Heard heard = Heard.of(decoder, TOPIC, json);

    assertThat(heard.readings).isEmpty();
    assertThat(heard.rejected)
        .containsExactly(
            new Rejected(
                reason,
                PLACE
                    + "time: found \""
                    + found
                    + "\"; allowed: a time such as 2026-03-02T08:00:00.000Z, with Z or an offset,"
                    + " from 1970 to 2262"));
  }

  @Test
  void messageThatSaysNothingMapped_needsNoTime() {
    MappingDecoder decoder =
        Heard.json(
            Heard.time("/at", TimeFormat.ISO), Heard.plain(Signal.HOT_END_TEMPERATURE, "/t"));

    assertThat(Heard.of(decoder, TOPIC, "{\"lid\":\"open\"}").rejected).isEmpty();
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        " ",
        "{\"t\":20",
        "{\"t\":20}}",
        "{\"t\":20} x",
        "{t:20}",
        "{\"t\":020}",
        "20,"
      })
  void tornDocument_tellsNothingButItsTear(String json) {
    Heard heard = Heard.of(TEMPERATURE, TOPIC, json);

    assertThat(heard.readings).isEmpty();
    assertThat(heard.reasons()).containsExactly(Reason.TORN_LINE);
    assertThat(heard.rejected.get(0).detail()).startsWith(PLACE + "payload: found \"");
  }

  @Test
  void tornDocument_isToldWithThePlaceOfItsTear() {
    assertThat(Heard.of(TEMPERATURE, TOPIC, "{\"t\":20,x}").rejected.get(0).detail())
        .isEqualTo(
            PLACE
                + "payload: found \"{\"t\":20,x}\"; allowed: one whole JSON document; it breaks"
                + " after 8 bytes");
  }

  /** Overlong, a lone continuation, an encoded surrogate, a cut sequence: RFC 3629, section 3. */
  @Test
  void bytesThatAreNoUtf8_areTornWhereverTheyStand() {
    byte[][] bad = {
      {(byte) 0xC0, (byte) 0xAF},
      {(byte) 0x80},
      {(byte) 0xED, (byte) 0xA0, (byte) 0x80},
      {(byte) 0xE2, (byte) 0x82}
    };
    for (byte[] bytes : bad) {
      byte[] payload = "{\"t\":20,\"x\":\"....\"}".getBytes(StandardCharsets.UTF_8);
      System.arraycopy(bytes, 0, payload, 13, bytes.length);
      assertThat(Heard.of(TEMPERATURE, TOPIC, payload).reasons()).containsExactly(Reason.TORN_LINE);
    }
    assertThat(Heard.of(TEMPERATURE, TOPIC, "{\"t\":20,\"x\":\"é😀\"}").readings).hasSize(1);
  }

  @Test
  void documentsOverTheLimits_areTooLong() {
    MappingDecoder small =
        new MappingDecoder(List.of(new Route(PlantExample.STATUS_JSON, Set.of("heron"))), 100);
    String deep = "[".repeat(101) + "]".repeat(101);
    String digits = "{\"t\":" + "1".repeat(201) + "}";

    assertThat(Heard.of(small, TOPIC, " ".repeat(101)).rejected)
        .containsExactly(
            new Rejected(
                Reason.TOO_LONG,
                PLACE + "payload: found \"101 bytes\"; allowed: at most 100 bytes"));
    assertThat(Heard.of(TEMPERATURE, TOPIC, deep).reasons()).containsExactly(Reason.TOO_LONG);
    assertThat(Heard.of(TEMPERATURE, TOPIC, digits).reasons()).containsExactly(Reason.TOO_LONG);
    assertThat(
            Heard.of(
                    TEMPERATURE, TOPIC, "{\"t\":20}" + " ".repeat(MappingDecoder.MAX_PAYLOAD_BYTES))
                .reasons())
        .containsExactly(Reason.TOO_LONG);
  }

  @ParameterizedTest
  @CsvSource({"214.9, 214.9", "' 214.9\r\n', 214.9", "-1e1, -10"})
  void plainNumber_isRead(String payload, double celsius) {
    assertThat(Heard.of(plainNumber(), TOPIC, payload).readings)
        .containsExactly(new Reading.HotEndTemperature(ARRIVED, celsius));
  }

  @ParameterizedTest
  @CsvSource({
    "'', NOT_A_NUMBER",
    "off, NOT_A_NUMBER",
    "'\"214.9\"', NOT_A_NUMBER",
    "601, OUT_OF_RANGE"
  })
  void plainNumber_thatIsNone_isRefused(String payload, Reason reason) {
    assertThat(Heard.of(plainNumber(), TOPIC, payload).reasons()).containsExactly(reason);
  }

  @Test
  void plainBytes_thatAreNoUtf8_areTorn() {
    assertThat(Heard.of(plainNumber(), TOPIC, new byte[] {'2', (byte) 0xFF}).reasons())
        .containsExactly(Reason.TORN_LINE);
  }

  @Test
  void plainText_isAWordOrAName() {
    assertThat(Heard.of(plainText(Signal.JOB_STATE), TOPIC, "Printing\n").readings)
        .containsExactly(new Reading.JobStatus(ARRIVED, JobState.PRINTING));
    assertThat(Heard.of(plainText(Signal.JOB), TOPIC, "plant labels").readings)
        .containsExactly(new Reading.Job(ARRIVED, "plant labels"));
    assertThat(Heard.of(plainText(Signal.JOB), TOPIC, "").readings)
        .containsExactly(new Reading.Job(ARRIVED, ""));
  }

  private static MappingDecoder plainNumber() {
    return plainPayload(PayloadForm.NUMBER, Signal.HOT_END_TEMPERATURE);
  }

  private static MappingDecoder plainText(Signal signal) {
    return plainPayload(PayloadForm.TEXT, signal);
  }

  private static MappingDecoder plainPayload(PayloadForm form, Signal signal) {
    return Heard.decoder(
        new MessageRule(
            TopicPattern.of("plant/{printer}/status"),
            form,
            Optional.empty(),
            List.of(Heard.plain(signal, ""))));
  }
}
