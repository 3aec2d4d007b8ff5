package meltkeeper.alert.route;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.fasterxml.jackson.databind.node.TextNode;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.StreamSupport;
import meltkeeper.protocol.Fault;

/**
 * The body of a request: JSON with {@code ${text}} and the like within its strings, where the
 * fields of an alert go, escaped as JSON wants it.
 */
public record BodyTemplate(String text) {

  private static final Pattern PLACE = Pattern.compile("\\$\\{([^}]*)}");

  /** The fields that may be named. */
  public static final List<String> FIELDS =
      List.of(
          "id",
          "episode",
          "topic",
          "phase",
          "pressing",
          "printer",
          "hot_end",
          "part",
          "began",
          "at",
          "title",
          "text",
          "cautions",
          "sample");

  /** The rule in words. */
  public static final String ALLOWED =
      "a text with ${FIELD} where a field stands: " + String.join(", ", FIELDS);

  /** What is wrong with a template. */
  public static Optional<Fault> fault(String text) {
    return PLACE
        .matcher(text)
        .results()
        .map(place -> place.group(1))
        .filter(field -> !FIELDS.contains(field))
        .findFirst()
        .map(field -> Fault.of("", "${" + field + "}", ALLOWED));
  }

  String filled(Message message) {
    ObjectNode fields = AlertJson.of(message);
    return PLACE
        .matcher(text)
        .replaceAll(place -> Matcher.quoteReplacement(escaped(fields.get(place.group(1)))));
  }

  private static String escaped(@org.jspecify.annotations.Nullable JsonNode value) {
    if (value == null) {
      return "";
    }
    String plain =
        value.isArray()
            ? StreamSupport.stream(value.spliterator(), false)
                .map(JsonNode::asText)
                .collect(Collectors.joining(" "))
            : value.asText();
    String quoted = TextNode.valueOf(plain).toString();
    return quoted.substring(1, quoted.length() - 1);
  }
}
