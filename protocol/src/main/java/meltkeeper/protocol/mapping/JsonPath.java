package meltkeeper.protocol.mapping;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import meltkeeper.protocol.Fault;

/**
 * A JSON Pointer: the place of a value in a JSON document.
 *
 * <p>The empty text is the whole document. A token that is a number without leading zeros picks an
 * element of a list, counted from 0; {@code -}, the element after the last, is never there to read.
 * Source: RFC 6901.
 *
 * @param tokens the keys on the way down, unescaped
 */
public record JsonPath(List<String> tokens) {

  public JsonPath {
    tokens = List.copyOf(tokens);
  }

  /** What is wrong with the text as a JSON Pointer; empty when nothing is. */
  public static Optional<Fault> fault(String text) {
    if (!text.isEmpty() && text.charAt(0) != '/') {
      return Optional.of(
          Fault.of(
              "at",
              text,
              "a JSON Pointer: empty, or / before each key",
              "write /" + text.replace('.', '/')));
    }
    for (int i = text.indexOf('~'); i >= 0; i = text.indexOf('~', i + 1)) {
      if (!text.startsWith("~0", i) && !text.startsWith("~1", i)) {
        return Optional.of(
            Fault.of("at", text, "~ only before 0 or 1", "write ~0 for ~ and ~1 for /"));
      }
    }
    return Optional.empty();
  }

  /**
   * The pointer of a text.
   *
   * @throws IllegalArgumentException with the text of its {@link #fault(String) fault}
   */
  public static JsonPath of(String text) {
    fault(text)
        .ifPresent(
            fault -> {
              throw new IllegalArgumentException(fault.toString());
            });
    return text.isEmpty()
        ? new JsonPath(List.of())
        : new JsonPath(
            Arrays.stream(text.substring(1).split("/", -1))
                .map(token -> token.replace("~1", "/").replace("~0", "~"))
                .toList());
  }

  /** The pointer as written. */
  @Override
  public String toString() {
    StringBuilder text = new StringBuilder();
    for (String token : tokens) {
      text.append('/').append(token.replace("~", "~0").replace("/", "~1"));
    }
    return text.toString();
  }
}
