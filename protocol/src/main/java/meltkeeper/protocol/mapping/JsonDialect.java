package meltkeeper.protocol.mapping;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonFactoryBuilder;
import com.fasterxml.jackson.core.StreamReadConstraints;
import com.fasterxml.jackson.core.StreamReadFeature;
import com.fasterxml.jackson.core.json.JsonReadFeature;

/**
 * JSON as printers write it: RFC 8259 in UTF-8, within limits, and with the bare words NaN and
 * Infinity that some serialisers emit for a sensor that is not there; such a value alone is
 * refused, not its whole message.
 */
final class JsonDialect {

  private static final int MAX_DEPTH = 100;
  private static final int MAX_NUMBER = 200;

  /** What {@link #factory} allows, for a person. */
  static final String LIMITS =
      "values nested at most %d deep, numbers of at most %d digits"
          .formatted(MAX_DEPTH, MAX_NUMBER);

  private JsonDialect() {}

  /** Parsers for documents of at most so many bytes. */
  static JsonFactory factory(int maxBytes) {
    return new JsonFactoryBuilder()
        .disable(JsonFactory.Feature.INTERN_FIELD_NAMES)
        .disable(JsonFactory.Feature.CHARSET_DETECTION)
        .enable(StreamReadFeature.USE_FAST_DOUBLE_PARSER)
        .enable(JsonReadFeature.ALLOW_NON_NUMERIC_NUMBERS)
        .streamReadConstraints(
            StreamReadConstraints.builder()
                .maxNestingDepth(MAX_DEPTH)
                .maxNumberLength(MAX_NUMBER)
                .maxStringLength(maxBytes)
                .maxNameLength(maxBytes)
                .build())
        .build();
  }
}
