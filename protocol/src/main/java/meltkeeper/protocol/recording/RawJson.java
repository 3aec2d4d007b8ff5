package meltkeeper.protocol.recording;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonFactoryBuilder;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.core.StreamReadConstraints;
import java.io.IOException;
import java.util.Arrays;
import meltkeeper.protocol.Payload;

/** JSON values by their very text. */
final class RawJson {

  private static final int MAX_DEPTH = 500;
  private static final int MAX_NUMBER = 1_000;

  /** Parsers for a payload. */
  private static final JsonFactory PAYLOADS = factory(MAX_DEPTH);

  /** Parsers for a line, which holds a payload one level down. */
  static final JsonFactory LINES = factory(MAX_DEPTH + 1);

  /** What the parsers allow, for a person. */
  static final String LIMITS =
      "values nested at most %d deep, numbers of at most %d digits"
          .formatted(MAX_DEPTH, MAX_NUMBER);

  private RawJson() {}

  private static JsonFactory factory(int maxDepth) {
    return new JsonFactoryBuilder()
        .disable(JsonFactory.Feature.INTERN_FIELD_NAMES)
        .disable(JsonFactory.Feature.CHARSET_DETECTION)
        .streamReadConstraints(
            StreamReadConstraints.builder()
                .maxNestingDepth(maxDepth)
                .maxNumberLength(MAX_NUMBER)
                .maxStringLength(Integer.MAX_VALUE)
                .maxNameLength(Integer.MAX_VALUE)
                .build())
        .build();
  }

  /** True when the bytes, put into a line as they are, are read back as they are. */
  static boolean standsInALine(Payload payload) {
    byte[] bytes = payload.array();
    if (bytes.length == 0 || !begins(bytes[0]) || !ends(bytes[bytes.length - 1])) {
      return false;
    }
    for (byte b : bytes) {
      if (b == '\n' || b == '\r') {
        return false;
      }
    }
    return payload.isUtf8() && isOneValue(bytes);
  }

  private static boolean begins(byte first) {
    return first == '{' || first == '[' || first == '-' || isDigit(first);
  }

  private static boolean ends(byte last) {
    return last == '}' || last == ']' || isDigit(last);
  }

  private static boolean isDigit(byte b) {
    return b >= '0' && b <= '9';
  }

  private static boolean isOneValue(byte[] bytes) {
    try (JsonParser in = PAYLOADS.createParser(bytes)) {
      JsonToken first = in.nextToken();
      in.skipChildren();
      return first != null && in.nextToken() == null;
    } catch (IOException e) {
      return false;
    }
  }

  /** The bytes of the value at the parser's token, as they stand in its source. */
  static byte[] bytesOf(JsonParser in, byte[] source) throws IOException {
    if (!in.currentToken().isStructStart()) {
      return Payload.of(in.getText()).array();
    }
    int from = (int) in.currentTokenLocation().getByteOffset();
    in.skipChildren();
    int to = (int) in.currentLocation().getByteOffset();
    return Arrays.copyOfRange(source, from, to);
  }
}
