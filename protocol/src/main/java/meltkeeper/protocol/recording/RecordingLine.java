package meltkeeper.protocol.recording;

import com.fasterxml.jackson.core.io.JsonStringEncoder;
import java.nio.charset.StandardCharsets;
import java.util.Base64;
import java.util.function.Consumer;
import meltkeeper.protocol.IsoTime;
import meltkeeper.protocol.Origin;
import meltkeeper.protocol.Payload;
import meltkeeper.protocol.Received;
import meltkeeper.protocol.Rejected;

/**
 * One line of a recording: a JSON object for one {@link Received}.
 *
 * <pre>{@code
 * {"at":"2026-03-02T08:00:00.000Z","broker":"shop","topic":"plant/heron/status","payload":{...}}
 * {"at":"2026-03-02T08:00:00.000Z","printer":"ibis","in":"ok T:214.9 /215.0"}
 * }</pre>
 *
 * <p>{@code at} is the arrival on the clock that never steps, from 1970 to 2262, to the nanosecond;
 * a line that is read arrived then on both clocks. {@code in} came from the printer, {@code out}
 * went to it. {@code "retained":true} marks a message that the broker kept from before. Members of
 * other names are ignored; of a name that comes twice, the last one counts.
 *
 * <p>The payload's bytes are kept exactly. They stand as JSON when they are an object, a list or a
 * number without a line break in it: the bytes are then the text of that value as it stands in the
 * line. Other text in UTF-8 stands as a string. Bytes that are no UTF-8 stand in base64 (RFC 4648)
 * under {@code payload64}, {@code in64} or {@code out64}.
 */
public final class RecordingLine {

  private RecordingLine() {}

  /** The line of what was received, without a line break. */
  public static String print(Received received) {
    StringBuilder line = new StringBuilder(received.payload().length() + 96);
    line.append("{\"at\":\"").append(IsoTime.text(received.arrival().steadyNanos())).append('"');
    if (received.origin() instanceof Origin.Topic origin) {
      text(line, "broker", origin.broker());
      text(line, "topic", origin.topic());
      retained(line, received);
      payload(line, received.payload());
    } else if (received.origin() instanceof Origin.Line origin) {
      text(line, "printer", origin.printer());
      retained(line, received);
      bytes(line, origin.direction() == Origin.Direction.IN ? "in" : "out", received.payload());
    }
    return line.append('}').toString();
  }

  /**
   * Reads one line, without its line break; hands over either what was received, or why the line
   * cannot be read. Never throws of its own.
   */
  public static void parse(
      byte[] line, Consumer<Received> onReceived, Consumer<Rejected> onRejected) {
    new LineReader(line).read(onReceived, onRejected);
  }

  /** Reads one line of text, as {@link #parse(byte[], Consumer, Consumer)} does its bytes. */
  public static void parse(
      String line, Consumer<Received> onReceived, Consumer<Rejected> onRejected) {
    parse(line.getBytes(StandardCharsets.UTF_8), onReceived, onRejected);
  }

  private static void retained(StringBuilder line, Received received) {
    if (received.retained()) {
      line.append(",\"retained\":true");
    }
  }

  private static void payload(StringBuilder line, Payload payload) {
    if (RawJson.standsInALine(payload)) {
      line.append(",\"payload\":").append(payload.text());
    } else {
      bytes(line, "payload", payload);
    }
  }

  private static void bytes(StringBuilder line, String key, Payload payload) {
    if (payload.isUtf8()) {
      text(line, key, payload.text());
    } else {
      text(line, key + "64", Base64.getEncoder().encodeToString(payload.array()));
    }
  }

  private static void text(StringBuilder line, String key, String value) {
    line.append(",\"").append(key).append("\":\"");
    JsonStringEncoder.getInstance().quoteAsString(value, line);
    line.append('"');
  }
}
