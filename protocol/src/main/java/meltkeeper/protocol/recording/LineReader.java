package meltkeeper.protocol.recording;

import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.core.exc.StreamConstraintsException;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Base64;
import java.util.Optional;
import java.util.function.Consumer;
import meltkeeper.protocol.Arrival;
import meltkeeper.protocol.Fault;
import meltkeeper.protocol.IsoTime;
import meltkeeper.protocol.Origin;
import meltkeeper.protocol.Origin.Direction;
import meltkeeper.protocol.Payload;
import meltkeeper.protocol.Received;
import meltkeeper.protocol.Rejected;
import meltkeeper.protocol.Rejected.Reason;

/** Reads one line, once. */
final class LineReader {

  private static final int SHOWN_BYTES = 200;
  private static final String FORMS =
      "at with broker, topic and payload, or at with printer and in or out";

  private final byte[] line;
  private String at = "";
  private String broker = "";
  private String topic = "";
  private String printer = "";
  private boolean retained;
  private String contentKey = "";
  private byte[] content = {};
  private boolean twoContents;
  private boolean brokenBase64;

  LineReader(byte[] line) {
    this.line = line;
  }

  void read(Consumer<Received> onReceived, Consumer<Rejected> onRejected) {
    Optional<Rejected> torn = members();
    if (torn.isPresent()) {
      onRejected.accept(torn.get());
      return;
    }
    Optional<Origin> origin = origin();
    if (origin.isEmpty()) {
      onRejected.accept(rejected(Reason.UNKNOWN_LINE, "line", start(), FORMS));
      return;
    }
    long nanos = IsoTime.nanos(at);
    if (nanos < 0) {
      Reason reason = nanos == IsoTime.OUT_OF_RANGE ? Reason.OUT_OF_RANGE : Reason.NOT_A_NUMBER;
      onRejected.accept(rejected(reason, "at", at, IsoTime.ALLOWED));
      return;
    }
    onReceived.accept(new Received(origin.get(), Payload.of(content), Arrival.at(nanos), retained));
  }

  private Optional<Origin> origin() {
    if (twoContents || printer.isBlank() == topic.isEmpty()) {
      return Optional.empty();
    }
    return switch (contentKey) {
      case "payload" ->
          broker.isBlank() || topic.isEmpty()
              ? Optional.empty()
              : Optional.of(new Origin.Topic(broker, topic));
      case "in" -> line(Direction.IN);
      case "out" -> line(Direction.OUT);
      default -> Optional.empty();
    };
  }

  private Optional<Origin> line(Direction direction) {
    return printer.isBlank() ? Optional.empty() : Optional.of(new Origin.Line(printer, direction));
  }

  /** Takes the members in; tells why when the line is torn. */
  private Optional<Rejected> members() {
    if (!Payload.of(line).isUtf8()) {
      return Optional.of(rejected(Reason.TORN_LINE, "line", start(), "UTF-8"));
    }
    try (JsonParser in = RawJson.LINES.createParser(line)) {
      if (in.nextToken() == JsonToken.START_OBJECT) {
        for (String key = in.nextFieldName(); key != null; key = in.nextFieldName()) {
          in.nextToken();
          member(key, in);
        }
        if (brokenBase64) {
          return Optional.of(rejected(Reason.TORN_LINE, "line", start(), "base64 as in RFC 4648"));
        }
        if (in.nextToken() == null) {
          return Optional.empty();
        }
      }
      return Optional.of(rejected(Reason.TORN_LINE, "line", start(), "one JSON object"));
    } catch (StreamConstraintsException e) {
      return Optional.of(rejected(Reason.TOO_LONG, "line", start(), RawJson.LIMITS));
    } catch (IOException e) {
      return Optional.of(rejected(Reason.TORN_LINE, "line", start(), "one whole JSON object"));
    }
  }

  private void member(String key, JsonParser in) throws IOException {
    switch (key) {
      case "at" -> at = text(in);
      case "broker" -> broker = text(in);
      case "topic" -> topic = text(in);
      case "printer" -> printer = text(in);
      case "retained" -> retained = in.currentToken() == JsonToken.VALUE_TRUE;
      case "payload", "in", "out" -> content(key, RawJson.bytesOf(in, line));
      case "payload64", "in64", "out64" ->
          content(key.substring(0, key.length() - 2), fromBase64(text(in)));
      default -> in.skipChildren();
    }
  }

  private void content(String key, byte[] bytes) {
    twoContents |= !contentKey.isEmpty() && !contentKey.equals(key);
    contentKey = key;
    content = bytes;
  }

  private byte[] fromBase64(String text) {
    try {
      return Base64.getDecoder().decode(text);
    } catch (IllegalArgumentException e) {
      brokenBase64 = true;
      return new byte[0];
    }
  }

  private static String text(JsonParser in) throws IOException {
    if (in.currentToken() == JsonToken.VALUE_STRING) {
      return in.getText();
    }
    in.skipChildren();
    return "";
  }

  private String start() {
    return new String(line, 0, Math.min(line.length, SHOWN_BYTES), StandardCharsets.UTF_8);
  }

  private static Rejected rejected(Reason reason, String key, String found, String allowed) {
    return new Rejected(reason, Fault.of(key, found, allowed).toString());
  }
}
