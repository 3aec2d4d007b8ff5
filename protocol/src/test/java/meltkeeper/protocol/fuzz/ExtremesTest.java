package meltkeeper.protocol.fuzz;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import com.sun.management.ThreadMXBean;
import java.lang.management.ManagementFactory;
import java.util.function.Consumer;
import meltkeeper.protocol.Origin;
import meltkeeper.protocol.Payload;
import meltkeeper.protocol.gcode.GcodeDecoder;
import meltkeeper.protocol.gcode.LineSplitter;
import meltkeeper.protocol.recording.RecordingLine;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Input far beyond all measure: refused, at the price of its own length at most. */
@Timeout(60) // Against a path that never ends; no measure of speed.
final class ExtremesTest {

  /** Memory taken for each byte that came in; each is read up to four times, and may be copied. */
  private static final long BYTES_A_BYTE = 16;

  private static final long ALLOWANCE = 4 << 20;

  /** Too much of one thing. */
  enum Extreme {
    LINE_OF_TEN_MEGABYTES("9".repeat(10_000_000)),
    NESTED_TEN_THOUSAND_DEEP("{\"at\":".repeat(10_000) + "1" + "}".repeat(10_000)),
    LISTS_TEN_THOUSAND_DEEP("[".repeat(10_000)),
    NUMBER_OF_A_MILLION_DIGITS("{\"hotend\":{\"now\":" + "2".repeat(1_000_000) + "}}"),
    EXPONENT_OF_A_MILLION_DIGITS("{\"hotend\":{\"now\":1e" + "9".repeat(1_000_000) + "}}"),
    NUMBER_IN_A_TEXT("{\"hotend\":{\"now\":\"" + "2".repeat(1_000_000) + "\"}}"),
    TIME_OF_A_MILLION_DIGITS("{\"at\":\"" + "2".repeat(1_000_000) + "\",\"hotend\":{\"now\":215}}"),
    KEY_OF_A_MEGABYTE("{\"" + "k".repeat(1_000_000) + "\":1}"),
    HUNDRED_THOUSAND_KEYS("{" + "\"now\":1,".repeat(100_000) + "\"now\":1}"),
    TEMPERATURE_OF_A_MILLION_DIGITS("T:" + "2".repeat(1_000_000) + " /215.0"),
    MOVE_OF_A_MILLION_WORDS("G1" + " E1.5".repeat(1_000_000)),
    COMMENT_OF_TEN_MEGABYTES(";" + "x".repeat(10_000_000)),
    BRACKETS("G1 " + "(".repeat(1_000_000));

    private final String text;

    Extreme(String text) {
      this.text = text;
    }

    byte[] bytes() {
      return text.getBytes(UTF_8);
    }
  }

  @ParameterizedTest
  @EnumSource
  void extreme_asAMessage_tellsNothing(Extreme extreme) {
    Listener listener = new Listener();
    byte[] bytes = extreme.bytes();

    cheaply(bytes, b -> listener.message(Listener.json(), b).message(Listener.number(), b));

    assertThat(listener.readings()).isZero();
  }

  @ParameterizedTest
  @EnumSource
  void extreme_asALine_tellsNothing(Extreme extreme) {
    Listener listener = new Listener();
    GcodeDecoder decoder = new GcodeDecoder("ibis");
    LineSplitter lines = new LineSplitter();

    cheaply(
        (extreme.text + "\n").getBytes(UTF_8),
        b -> {
          lines.feed(b, line -> listener.line(decoder, line, Origin.Direction.IN));
          lines.feed(b, line -> listener.line(decoder, line, Origin.Direction.OUT));
          listener.line(decoder, Payload.of(b), Origin.Direction.IN);
          listener.line(decoder, Payload.of(b), Origin.Direction.OUT);
        });

    assertThat(listener.readings()).isZero();
  }

  @ParameterizedTest
  @EnumSource
  void extreme_asALineOfARecording_isRejected(Extreme extreme) {
    int[] outcome = new int[2];

    cheaply(extreme.bytes(), b -> RecordingLine.parse(b, r -> outcome[0]++, r -> outcome[1]++));

    assertThat(outcome).containsExactly(0, 1);
  }

  @Test
  void duplicateKeys_inAMessage_theLastCounts() {
    Listener listener =
        new Listener()
            .message(
                Listener.json(),
                "{\"at\":\"2026-03-02T08:00:00Z\",\"hotend\":{\"now\":999,\"now\":215}}"
                    .getBytes(UTF_8));

    assertThat(listener.readings()).isEqualTo(1);
    assertThat(listener.rejections()).isZero();
  }

  @Test
  void bytesThatAreNoUtf8_tellNothing() {
    byte[] bytes = new byte[256];
    for (int i = 0; i < bytes.length; i++) {
      bytes[i] = (byte) i;
    }
    byte[] inJson = "{\"at\":\"2026-03-02T08:00:00Z\",\"job\":{\"name\":\"??\"}}".getBytes(UTF_8);
    inJson[inJson.length - 5] = (byte) 0xC3;
    inJson[inJson.length - 4] = (byte) 0x28;
    Listener listener = new Listener();

    listener.message(Listener.json(), bytes).message(Listener.number(), bytes);
    listener.message(Listener.json(), inJson);
    listener.line(new GcodeDecoder("ibis"), Payload.of(bytes), Origin.Direction.IN);

    assertThat(listener.readings()).isZero();
    assertThat(listener.rejections()).isPositive();
  }

  /** Lets it be read, and holds the memory that it took to the input's length. */
  private static void cheaply(byte[] bytes, Consumer<byte[]> reading) {
    ThreadMXBean threads = (ThreadMXBean) ManagementFactory.getThreadMXBean();
    long before = threads.getCurrentThreadAllocatedBytes();
    reading.accept(bytes);
    long taken = threads.getCurrentThreadAllocatedBytes() - before;
    assertThat(taken).isLessThan(bytes.length * BYTES_A_BYTE + ALLOWANCE);
  }
}
