package meltkeeper.protocol.recording;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import meltkeeper.protocol.Arrival;
import meltkeeper.protocol.Origin;
import meltkeeper.protocol.Origin.Direction;
import meltkeeper.protocol.Payload;
import meltkeeper.protocol.Received;
import meltkeeper.protocol.Rejected;
import meltkeeper.protocol.Rejected.Reason;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class RecordingLineTest {

  // `date -u -d 2026-03-02T08:00 +%s` gives 1772438400.
  private static final long EIGHT = 1_772_438_400_000_000_000L;

  private static final Origin HERON = new Origin.Topic("shop", "plant/heron/status");

  private final List<Received> received = new ArrayList<>();
  private final List<Rejected> rejected = new ArrayList<>();

  @Test
  void goldenRecording_lineByLine_isReadExactly() throws IOException {
    golden().forEach(this::parse);

    assertThat(rejected).isEmpty();
    assertThat(received)
        .containsExactly(
            new Received(
                HERON,
                Payload.of(
                    "{\"at\":\"2026-03-02T07:58:12.5Z\",\"hotend\":{\"now\":21.4,\"set\":0,"
                        + "\"pwm\":0},\"job\":{\"state\":\"REST\"}}"),
                Arrival.at(EIGHT),
                true),
            Received.fresh(
                HERON,
                Payload.of(
                    "{\"at\": \"2026-03-02T08:00:01.2Z\", \"hotend\": {\"now\": 2.14e2, \"set\":"
                        + " 215.0, \"pwm\": 127}}"),
                Arrival.at(EIGHT + 1_250_000_000L)),
            Received.fresh(
                new Origin.Topic("shop", "plant/egret/hotend/now"),
                Payload.of("214.90"),
                Arrival.at(EIGHT + 1_251_000_251L)),
            Received.fresh(
                new Origin.Topic("shop", "plant/egret/job"),
                Payload.of("plant labels, “thyme”"),
                Arrival.at(EIGHT + 1_300_000_000L)),
            Received.fresh(
                new Origin.Line("ibis", Direction.OUT),
                Payload.of("M105"),
                Arrival.at(EIGHT + 2_000_000_000L)),
            Received.fresh(
                new Origin.Line("ibis", Direction.IN),
                Payload.of("ok T:214.9 /215.0 B:60.0 /60.0 @:54 B@:20"),
                Arrival.at(EIGHT + 2_011_000_000L)),
            Received.fresh(
                new Origin.Line("ibis", Direction.IN),
                Payload.of(new byte[] {'o', 'k', ' ', 'T', ':', (byte) 0xFF}),
                Arrival.at(EIGHT + 2_500_000_000L)),
            Received.fresh(
                new Origin.Topic("shop", "plant/heron/lid"),
                Payload.of(new byte[] {(byte) 0xC0, (byte) 0x80}),
                Arrival.at(EIGHT + 3_000_000_000L)));
  }

  @Test
  void goldenRecording_printedAnew_isTheSameText() throws IOException {
    List<String> lines = golden();
    lines.forEach(this::parse);

    assertThat(received.stream().map(RecordingLine::print)).containsExactlyElementsOf(lines);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "{\"a\":1}|\"payload\":{\"a\":1}",
        "[1, 2]|\"payload\":[1, 2]",
        "1.50|\"payload\":1.50",
        "-0|\"payload\":-0",
        "` {}`|\"payload\":\" {}\"",
        "{} {}|\"payload\":\"{} {}\"",
        "{\"a\":|\"payload\":\"{\\\"a\\\":\"",
        "01|\"payload\":\"01\"",
        "true|\"payload\":\"true\"",
        "null|\"payload\":\"null\"",
        "\"x\"|\"payload\":\"\\\"x\\\"\"",
        "``|\"payload\":\"\"",
        "[NaN]|\"payload\":\"[NaN]\"",
      })
  void payload_thatStandsAsItIs_isJsonAndElseAString(String payload, String member) {
    assertThat(RecordingLine.print(fresh(payload.getBytes(StandardCharsets.UTF_8))))
        .endsWith("," + member + "}");
  }

  @Test
  void payloadWithLineBreaks_staysOnOneLine() {
    String printed = RecordingLine.print(fresh("{\n\"a\":1}\r".getBytes(StandardCharsets.UTF_8)));

    assertThat(printed).doesNotContain("\n", "\r").contains("\"payload\":\"{\\n");
  }

  @Test
  void handWrittenLine_inAnyOrderWithMembersUnknown_isRead() {
    parse(
        "{\"note\":{\"at\":1},\"payload\": { \"t\" : 1 } ,\"topic\":\"plant/heron/status\","
            + "\"x\":[],\"broker\":\"shop\", \"at\":\"2026-03-02T09:00:00+01:00\"}");

    assertThat(received).containsExactly(fresh("{ \"t\" : 1 }".getBytes(StandardCharsets.UTF_8)));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "``|TORN_LINE|one JSON object",
        "{\"at\":\"2026-03-02T08:0|TORN_LINE|one whole JSON object",
        "[]|TORN_LINE|one JSON object",
        "{} {}|TORN_LINE|one JSON object",
        "{}|UNKNOWN_LINE|at with broker, topic and payload",
        "{\"at\":\"x\",\"topic\":\"t\",\"payload\":1}|UNKNOWN_LINE|at with broker",
        "{\"at\":\"x\",\"printer\":\"ibis\",\"payload\":1}|UNKNOWN_LINE|printer and in or out",
        "{\"at\":\"x\",\"printer\":\"ibis\",\"in\":\"a\",\"out\":\"b\"}|UNKNOWN_LINE|in or out",
        "{\"printer\":\"ibis\",\"broker\":\"b\",\"topic\":\"t\",\"in\":\"a\"}|UNKNOWN_LINE|at with",
        "{\"at\":\"yesterday\",\"printer\":\"ibis\",\"in\":\"ok\"}|NOT_A_NUMBER|2026-03-02T08",
        "{\"at\":17,\"printer\":\"ibis\",\"in\":\"ok\"}|NOT_A_NUMBER|2026-03-02T08",
        "{\"printer\":\"ibis\",\"in\":\"ok\"}|NOT_A_NUMBER|2026-03-02T08",
        "{\"at\":\"2262-04-12T00:00:00Z\",\"printer\":\"i\",\"in\":\"ok\"}|OUT_OF_RANGE|to 2262",
        "{\"at\":\"1969-12-31T23:59:59Z\",\"printer\":\"i\",\"in\":\"ok\"}|OUT_OF_RANGE|from 1970",
        "{\"at\":\"2026-03-02T08:00:00Z\",\"printer\":\"i\",\"in64\":\"?\"}|TORN_LINE|base64",
      })
  void badLine_isRejectedWithWhatIsAllowed(String line, Reason reason, String allowed) {
    parse(line);

    assertThat(received).isEmpty();
    assertThat(rejected).singleElement().satisfies(r -> assertThat(r.reason()).isEqualTo(reason));
    assertThat(rejected.get(0).detail()).contains("allowed: ").contains(allowed);
  }

  @Test
  void lineNestedTooDeep_isTooLong() {
    parse("{\"payload\":" + "[".repeat(600) + "]".repeat(600) + "}");

    assertThat(rejected).extracting(Rejected::reason).containsExactly(Reason.TOO_LONG);
  }

  @ParameterizedTest(name = "seed {0}")
  @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
  void anythingReceived_printedAndParsed_isItself(long seed) {
    Random random = new Random(seed);
    for (int i = 0; i < 500; i++) {
      received.clear();
      Received one = RandomReceived.next(random);
      String line = RecordingLine.print(one);
      parse(line);

      assertThat(rejected).as(line).isEmpty();
      assertThat(received).as(line).containsExactly(one);
    }
  }

  @ParameterizedTest(name = "seed {0}")
  @ValueSource(longs = {11, 12, 13, 14})
  void anyBytes_neverThrowAndTellOneThing(long seed) throws IOException {
    Random random = new Random(seed);
    List<String> lines = golden();
    for (int i = 0; i < 2_000; i++) {
      received.clear();
      rejected.clear();
      byte[] line = lines.get(random.nextInt(lines.size())).getBytes(StandardCharsets.UTF_8);
      for (int hits = random.nextInt(4); hits >= 0; hits--) {
        line[random.nextInt(line.length)] = (byte) random.nextInt(256);
      }
      byte[] torn = Arrays.copyOf(line, random.nextInt(line.length + 1));
      RecordingLine.parse(random.nextBoolean() ? line : torn, received::add, rejected::add);

      assertThat(received.size() + rejected.size()).isEqualTo(1);
    }
  }

  private static Received fresh(byte[] payload) {
    return Received.fresh(HERON, Payload.of(payload), Arrival.at(EIGHT));
  }

  private void parse(String line) {
    RecordingLine.parse(line.getBytes(StandardCharsets.UTF_8), received::add, rejected::add);
  }

  private static List<String> golden() throws IOException {
    try (var in = RecordingLineTest.class.getResourceAsStream("morning.jsonl")) {
      assertThat(in).isNotNull();
      return new String(in.readAllBytes(), StandardCharsets.UTF_8).lines().toList();
    }
  }
}
