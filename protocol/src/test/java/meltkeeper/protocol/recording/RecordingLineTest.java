package meltkeeper.protocol.recording;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import meltkeeper.protocol.Arrival;
import meltkeeper.protocol.Origin;
import meltkeeper.protocol.Payload;
import meltkeeper.protocol.Received;
import meltkeeper.protocol.Rejected;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class RecordingLineTest {

  private static final Origin TOPIC = new Origin.Topic("shop", "plant/heron/status");

  private static Received parsed(String line) {
    List<Received> received = new ArrayList<>();
    RecordingLine.parse(
        line,
        received::add,
        rejected -> {
          throw new AssertionError(rejected.toString());
        });
    assertThat(received).hasSize(1);
    return received.get(0);
  }

  private static Rejected refused(String line) {
    List<Rejected> rejected = new ArrayList<>();
    RecordingLine.parse(
        line,
        received -> {
          throw new AssertionError(received.toString());
        },
        rejected::add);
    assertThat(rejected).hasSize(1);
    return rejected.get(0);
  }

  @Test
  void brokersLine_withAnObject_keepsItsBytes() {
    Received received =
        parsed(
            "{\"at\":\"2026-03-02T08:00:00.000Z\",\"broker\":\"shop\",\"topic\":\"plant/heron/status\","
                + "\"payload\":{ \"now\":214.90 , \"at\":[1, 2] }}");

    assertThat(received.origin()).isEqualTo(TOPIC);
    assertThat(received.payload().text()).isEqualTo("{ \"now\":214.90 , \"at\":[1, 2] }");
    // 2026-03-02T08:00:00Z is 1772438400 s after 1970 (date arithmetic).
    assertThat(received.arrival()).isEqualTo(Arrival.at(1_772_438_400_000_000_000L));
    assertThat(received.retained()).isFalse();
  }

  @ParameterizedTest
  @CsvSource(
      quoteCharacter = '`',
      delimiter = '|',
      value = {"214.9|214.9", "\"214.9\"|214.9"})
  void plainPayload_asNumberOrString_isItsText(String json, String bytes) {
    Received received =
        parsed(
            "{\"at\":\"2026-03-02T09:00:00+01:00\",\"broker\":\"shop\",\"topic\":\"t\",\"payload\":"
                + json
                + ",\"retained\":true}");

    assertThat(received.payload().text()).isEqualTo(bytes);
    assertThat(received.retained()).isTrue();
    assertThat(received.arrival()).isEqualTo(Arrival.at(1_772_438_400_000_000_000L));
  }

  @Test
  void printersLine_inAndOut_areToldApart() {
    String in = "{\"at\":\"2026-03-02T08:00:00Z\",\"printer\":\"ibis\",\"in\":\"ok T:214.9\"}";
    String out = "{\"at\":\"2026-03-02T08:00:00Z\",\"printer\":\"ibis\",\"out\":\"M105\"}";

    assertThat(parsed(in).origin()).isEqualTo(new Origin.Line("ibis", Origin.Direction.IN));
    assertThat(parsed(out).origin()).isEqualTo(new Origin.Line("ibis", Origin.Direction.OUT));
    assertThat(parsed(out).payload().text()).isEqualTo("M105");
  }

  @Test
  void badLines_areRefusedInWords() {
    assertThat(refused("{\"at\":\"2026-03-02T08:00").reason()).isEqualTo(Rejected.Reason.TORN_LINE);
    assertThat(refused("17").reason()).isEqualTo(Rejected.Reason.TORN_LINE);
    assertThat(refused("{\"at\":\"noon\",\"printer\":\"ibis\",\"in\":\"ok\"}"))
        .isEqualTo(
            new Rejected(
                Rejected.Reason.NOT_A_NUMBER,
                "\"at\" is a time such as \"2026-03-02T08:00:00.000Z\", not \"noon\""));
    assertThat(refused("{\"at\":\"2026-03-02T08:00:00Z\",\"printer\":\"ibis\"}").reason())
        .isEqualTo(Rejected.Reason.UNKNOWN_LINE);
  }

  @ParameterizedTest(name = "seed {0}")
  @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
  void anyPayload_printedAndParsed_isItself(long seed) {
    Random random = new Random(seed);
    for (int i = 0; i < 500; i++) {
      Received received =
          new Received(
              TOPIC,
              payload(random),
              Arrival.at(1_772_438_400_000_000_000L + random.nextInt(1_000_000_000)),
              random.nextBoolean());
      assertThat(parsed(RecordingLine.print(received))).isEqualTo(received);
    }
  }

  private static Payload payload(Random random) {
    return switch (random.nextInt(4)) {
      case 0 -> {
        byte[] bytes = new byte[random.nextInt(40)];
        random.nextBytes(bytes);
        yield Payload.of(bytes);
      }
      case 1 -> Payload.of("{\"a\": [" + random.nextDouble() + ", \"é\\n\"] ,\"b\":{}}");
      case 2 -> Payload.of("{\"torn\": " + random.nextInt());
      default ->
          Payload.of(
              random
                  .ints(12, 1, 0x250)
                  .collect(
                      StringBuilder::new, StringBuilder::appendCodePoint, StringBuilder::append)
                  .toString()
                  .getBytes(StandardCharsets.UTF_8));
    };
  }

  @ParameterizedTest(name = "seed {0}")
  @ValueSource(longs = {11, 12, 13})
  void anyText_neverThrows(long seed) {
    Random random = new Random(seed);
    String whole =
        "{\"at\":\"2026-03-02T08:00:00Z\",\"broker\":\"shop\",\"topic\":\"t\",\"payload\":{\"a\":1}}";
    for (int i = 0; i < 2000; i++) {
      StringBuilder text = new StringBuilder(whole);
      for (int change = 0; change <= random.nextInt(4); change++) {
        text.setCharAt(random.nextInt(text.length()), (char) (32 + random.nextInt(95)));
      }
      List<Object> told = new ArrayList<>();
      RecordingLine.parse(
          text.substring(0, random.nextInt(text.length() + 1)), told::add, told::add);
      assertThat(told).hasSize(1);
    }
  }
}
