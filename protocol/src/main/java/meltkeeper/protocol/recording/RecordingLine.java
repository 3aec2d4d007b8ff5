package meltkeeper.protocol.recording;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import java.io.IOException;
import java.io.StringWriter;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.Optional;
import java.util.function.Consumer;
import meltkeeper.protocol.Arrival;
import meltkeeper.protocol.Origin;
import meltkeeper.protocol.Payload;
import meltkeeper.protocol.Received;
import meltkeeper.protocol.Rejected;

/**
 * Prints and parses the lines of a recording.
 *
 * <p>A payload that is a JSON object or array on one line stands as it is; any other text stands as
 * a string; bytes that are no UTF-8 stand in Base64 under {@code payload64}. In each case parsing
 * gives the very bytes back. {@code at} is the steady half of the arrival, to the nanosecond.
 */
public final class RecordingLine {

  private static final JsonFactory JSON = new JsonFactory();
  private static final long NANOS_PER_SECOND = 1_000_000_000L;

  private RecordingLine() {}

  /** One line, without its end. */
  public static String print(Received received) {
    StringWriter line = new StringWriter();
    try (JsonGenerator json = JSON.createGenerator(line)) {
      json.writeStartObject();
      json.writeStringField("at", instant(received.arrival().steadyNanos()).toString());
      if (received.origin() instanceof Origin.Topic topic) {
        json.writeStringField("broker", topic.broker());
        json.writeStringField("topic", topic.topic());
        writePayload(json, received.payload());
      } else if (received.origin() instanceof Origin.Line printer) {
        json.writeStringField("printer", printer.printer());
        json.writeStringField(
            printer.direction() == Origin.Direction.IN ? "in" : "out", received.payload().text());
      }
      if (received.retained()) {
        json.writeBooleanField("retained", true);
      }
      json.writeEndObject();
    } catch (IOException e) {
      throw new IllegalStateException("a string cannot fail to be written to", e);
    }
    return line.toString();
  }

  private static Instant instant(long nanos) {
    return Instant.ofEpochSecond(0, nanos);
  }

  private static void writePayload(JsonGenerator json, Payload payload) throws IOException {
    Optional<String> text = strictText(payload);
    if (text.isEmpty()) {
      json.writeBinaryField("payload64", payload.array());
    } else if (isDocumentOnOneLine(text.get())) {
      json.writeFieldName("payload");
      json.writeRawValue(text.get());
    } else {
      json.writeStringField("payload", text.get());
    }
  }

  private static Optional<String> strictText(Payload payload) {
    try {
      return Optional.of(
          StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(payload.array())).toString());
    } catch (CharacterCodingException e) {
      return Optional.empty();
    }
  }

  /** True for one JSON object or array with nothing around it. */
  private static boolean isDocumentOnOneLine(String text) {
    if (text.length() < 2
        || (text.charAt(0) != '{' && text.charAt(0) != '[')
        || text.chars().anyMatch(c -> c < ' ')) {
      return false;
    }
    try (JsonParser parser = JSON.createParser(text)) {
      parser.nextToken();
      parser.skipChildren();
      return parser.currentLocation().getCharOffset() == text.length();
    } catch (IOException e) {
      return false;
    }
  }

  /**
   * Parses one line. Members that it does not know are passed over. Never throws for a bad line: it
   * tells what is wrong.
   */
  public static void parse(String line, Consumer<Received> received, Consumer<Rejected> rejected) {
    Members members = new Members();
    try (JsonParser parser = JSON.createParser(line)) {
      members.read(parser, line);
    } catch (IOException e) {
      rejected.accept(
          new Rejected(
              Rejected.Reason.TORN_LINE,
              "a recording has one whole JSON object a line, not " + shown(line)));
      return;
    }
    members.tell(line, received, rejected);
  }

  private static String shown(String line) {
    return "\"" + (line.length() <= 80 ? line : line.substring(0, 77) + "...") + "\"";
  }

  /** The members of one line, as far as they were met. */
  private static final class Members {

    private Optional<String> at = Optional.empty();
    private Optional<String> broker = Optional.empty();
    private Optional<String> topic = Optional.empty();
    private Optional<String> printer = Optional.empty();
    private Optional<String> in = Optional.empty();
    private Optional<String> out = Optional.empty();
    private Optional<Payload> payload = Optional.empty();
    private boolean retained;

    void read(JsonParser parser, String line) throws IOException {
      if (parser.nextToken() != JsonToken.START_OBJECT) {
        throw new IOException("no object");
      }
      while (parser.nextToken() != JsonToken.END_OBJECT) {
        if (parser.currentToken() != JsonToken.FIELD_NAME) {
          throw new IOException("the line ends in the middle");
        }
        String name = parser.currentName();
        parser.nextToken();
        readMember(name, parser, line);
      }
      if (parser.nextToken() != null) {
        throw new IOException("more than one object");
      }
    }

    private void readMember(String name, JsonParser parser, String line) throws IOException {
      switch (name) {
        case "at" -> at = Optional.of(parser.getText());
        case "broker" -> broker = Optional.of(parser.getText());
        case "topic" -> topic = Optional.of(parser.getText());
        case "printer" -> printer = Optional.of(parser.getText());
        case "in" -> in = Optional.of(parser.getText());
        case "out" -> out = Optional.of(parser.getText());
        case "payload" -> payload = Optional.of(payload(parser, line));
        case "payload64" -> payload = Optional.of(Payload.of(parser.getBinaryValue()));
        case "retained" -> retained = parser.currentToken() == JsonToken.VALUE_TRUE;
        default -> parser.skipChildren();
      }
    }

    /** A string stands for its text, anything else for itself. */
    private static Payload payload(JsonParser parser, String line) throws IOException {
      if (parser.currentToken() == JsonToken.VALUE_STRING) {
        return Payload.of(parser.getText());
      }
      int from = (int) parser.currentTokenLocation().getCharOffset();
      if (!parser.currentToken().isStructStart()) {
        return Payload.of(parser.getText());
      }
      parser.skipChildren();
      return Payload.of(line.substring(from, (int) parser.currentLocation().getCharOffset()));
    }

    void tell(String line, Consumer<Received> received, Consumer<Rejected> rejected) {
      Optional<Long> nanos = at.flatMap(Members::nanos);
      Optional<Origin> origin = origin();
      Optional<Payload> bytes = payload.or(() -> in.or(() -> out).map(Payload::of));
      if (nanos.isEmpty()) {
        rejected.accept(
            new Rejected(
                Rejected.Reason.NOT_A_NUMBER,
                "\"at\" is a time such as \"2026-03-02T08:00:00.000Z\", not "
                    + at.map(RecordingLine::shown).orElse("missing")));
      } else if (origin.isEmpty() || bytes.isEmpty()) {
        rejected.accept(
            new Rejected(
                Rejected.Reason.UNKNOWN_LINE,
                "a recording's line has \"broker\", \"topic\" and \"payload\", or \"printer\" and"
                    + " \"in\" or \"out\", not "
                    + shown(line)));
      } else {
        received.accept(new Received(origin.get(), bytes.get(), Arrival.at(nanos.get()), retained));
      }
    }

    private Optional<Origin> origin() {
      if (broker.isPresent() && topic.isPresent()) {
        return Optional.of(new Origin.Topic(broker.get(), topic.get()));
      }
      if (printer.isPresent() && in.isPresent() != out.isPresent()) {
        return Optional.of(
            new Origin.Line(
                printer.get(), in.isPresent() ? Origin.Direction.IN : Origin.Direction.OUT));
      }
      return Optional.empty();
    }

    private static Optional<Long> nanos(String text) {
      try {
        Instant instant = OffsetDateTime.parse(text).toInstant();
        return Optional.of(
            Math.addExact(
                Math.multiplyExact(instant.getEpochSecond(), NANOS_PER_SECOND), instant.getNano()));
      } catch (DateTimeException | ArithmeticException e) {
        return Optional.empty();
      }
    }
  }
}
