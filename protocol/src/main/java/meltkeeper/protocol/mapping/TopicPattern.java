package meltkeeper.protocol.mapping;

import java.nio.charset.StandardCharsets;
import java.util.Optional;
import meltkeeper.protocol.Fault;

/**
 * An MQTT topic filter in which {@code {printer}} captures one whole level.
 *
 * <p>{@code +} stands for one level, {@code #} at the end for the parent and all below it, and
 * neither a wildcard nor {@code {printer}} at the start matches a topic that begins with {@code $}.
 * Immutable. Source: OASIS MQTT 5.0, section 4.7.
 */
public final class TopicPattern {

  /** What stands for the printer's name. */
  public static final String PRINTER = "{printer}";

  private static final int MAX_BYTES = 65_535;
  private static final String KEY = "topic";

  private final String text;
  private final String[] levels;
  private final boolean capturing;

  private TopicPattern(String text) {
    this.text = text;
    this.levels = text.split("/", -1);
    this.capturing = text.contains(PRINTER);
  }

  /**
   * The pattern of a text.
   *
   * @throws IllegalArgumentException with the text of its {@link #fault(String) fault}
   */
  public static TopicPattern of(String text) {
    fault(text)
        .ifPresent(
            fault -> {
              throw new IllegalArgumentException(fault.toString());
            });
    return new TopicPattern(text);
  }

  /** What is wrong with the text as a pattern; empty when nothing is. */
  public static Optional<Fault> fault(String text) {
    if (text.isEmpty()) {
      return fault(text, "at least one character", "");
    }
    if (text.indexOf('\0') >= 0 || !StandardCharsets.UTF_8.newEncoder().canEncode(text)) {
      return fault(text, "characters that UTF-8 can carry, except U+0000", "");
    }
    if (text.getBytes(StandardCharsets.UTF_8).length > MAX_BYTES) {
      return fault(text, "at most " + MAX_BYTES + " bytes", "");
    }
    if (text.startsWith("$share/")) {
      return fault(
          text,
          "a topic filter that is not shared",
          "a shared one hands each message to one subscriber alone; leave out $share and the name"
              + " after it");
    }
    String[] levels = text.split("/", -1);
    int printers = 0;
    for (int i = 0; i < levels.length; i++) {
      String level = levels[i];
      if (level.indexOf('#') >= 0 && !(level.equals("#") && i == levels.length - 1)) {
        return fault(text, "# only as the whole of the last level", "");
      }
      if (level.indexOf('+') >= 0 && !level.equals("+")) {
        return fault(text, "+ only as a whole level", "");
      }
      if (level.equals(PRINTER)) {
        printers++;
      } else if (level.contains(PRINTER) || (level.startsWith("{") && level.endsWith("}"))) {
        return fault(text, PRINTER + " as a whole level and no other braces", "");
      }
    }
    return printers > 1
        ? fault(text, PRINTER + " at most once", "write + for the other levels")
        : Optional.empty();
  }

  private static Optional<Fault> fault(String text, String allowed, String mend) {
    return Optional.of(Fault.of(KEY, text, allowed, mend));
  }

  /** The filter to subscribe to at a broker: {@code +} in the place of {@code {printer}}. */
  public String subscription() {
    return text.replace(PRINTER, "+");
  }

  /** True when the pattern names a place for the printer. */
  public boolean capturesPrinter() {
    return capturing;
  }

  /** True when the topic matches. */
  public boolean matches(String topic) {
    return walk(topic) != NO_MATCH;
  }

  /**
   * The level that stands for the printer in a topic; empty when the topic does not match, or when
   * the pattern {@link #capturesPrinter() captures none}.
   */
  public Optional<String> capture(String topic) {
    int from = walk(topic);
    return from < 0 ? Optional.empty() : Optional.of(topic.substring(from, levelEnd(topic, from)));
  }

  private static final int NO_MATCH = -2;
  private static final int NO_PRINTER = -1;

  /** Where the captured level begins, or one of the two constants above. */
  private int walk(String topic) {
    if (topic.startsWith("$") && !levels[0].startsWith("$")) {
      return NO_MATCH;
    }
    int printer = NO_PRINTER;
    int from = 0;
    for (String level : levels) {
      if (level.equals("#")) {
        return printer;
      }
      if (from > topic.length()) {
        return NO_MATCH;
      }
      int end = levelEnd(topic, from);
      if (level.equals(PRINTER)) {
        printer = from;
      } else if (!level.equals("+")
          && !(level.length() == end - from && topic.startsWith(level, from))) {
        return NO_MATCH;
      }
      from = end + 1;
    }
    return from > topic.length() ? printer : NO_MATCH;
  }

  private static int levelEnd(String topic, int from) {
    int slash = topic.indexOf('/', from);
    return slash < 0 ? topic.length() : slash;
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof TopicPattern that && text.equals(that.text);
  }

  @Override
  public int hashCode() {
    return text.hashCode();
  }

  /** The pattern as written. */
  @Override
  public String toString() {
    return text;
  }
}
