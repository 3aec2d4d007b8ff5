package meltkeeper.proposal;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import meltkeeper.protocol.Signal;

/** A mapping and printers that would read a broker's messages, as lines of the configuration. */
public final class Proposal {

  private static final String PRINTER = "{printer}";

  /** One place taken for one signal of a topic pattern. */
  private record Taken(String pointer, Guess guess, Track track) {}

  private final Map<String, Map<Signal, Taken>> rules = new TreeMap<>();
  private final Set<String> printers = new TreeSet<>();

  private Proposal(Messages messages) {
    Map<String, Set<Signal>> telling = new TreeMap<>();
    messages
        .topics()
        .forEach(
            (topic, places) -> {
              Set<Signal> signals = signals(topic, places);
              if (topic.contains("/") && !signals.isEmpty()) {
                telling.put(topic, signals);
              }
            });
    int level = printerLevel(telling);
    telling
        .keySet()
        .forEach(topic -> take(topic, level, messages.topics().getOrDefault(topic, Map.of())));
    rules.replaceAll((topic, rule) -> settled(rule));
  }

  private static Set<Signal> signals(String topic, Map<String, Track> places) {
    Set<Signal> signals = new TreeSet<>();
    places.forEach(
        (pointer, track) ->
            Guess.of(topic, pointer, track).ifPresent(guess -> signals.add(guess.signal())));
    return signals;
  }

  /**
   * The proposal as YAML, its comments telling what was seen; empty when nothing was recognised.
   *
   * @param broker its name in the configuration
   */
  public static String of(Messages messages, String broker) {
    Proposal proposal = new Proposal(messages);
    return proposal.rules.isEmpty() || proposal.printers.isEmpty() ? "" : proposal.yaml(broker);
  }

  /**
   * The level at which most topics become one when it is left open; else the second. Topics that
   * tell different things never become one.
   */
  private static int printerLevel(Map<String, Set<Signal>> topics) {
    int best = 1;
    int fewest = Integer.MAX_VALUE;
    int deepest =
        topics.keySet().stream().mapToInt(topic -> topic.split("/", -1).length).max().orElse(0);
    for (int level : levels(deepest)) {
      Set<String> open = new TreeSet<>();
      topics.forEach(
          (topic, signals) -> open.add(opened(topic.split("/", -1), level) + " " + signals));
      if (open.size() < fewest) {
        fewest = open.size();
        best = level;
      }
    }
    return best;
  }

  /** The second level first: where all are equal, the printer most often stands there. */
  private static List<Integer> levels(int deepest) {
    List<Integer> levels = new ArrayList<>(List.of(1));
    for (int level = 0; level < deepest; level++) {
      if (level != 1) {
        levels.add(level);
      }
    }
    return levels;
  }

  private static String opened(String[] levels, int level) {
    String[] open = levels.clone();
    if (level < open.length) {
      open[level] = PRINTER;
    }
    return String.join("/", open);
  }

  /** A payload is either JSON or one value; of both, the JSON is taken. */
  private static Map<Signal, Taken> settled(Map<Signal, Taken> rule) {
    Map<Signal, Taken> settled = new EnumMap<>(rule);
    settled.values().removeIf(taken -> taken.pointer().isEmpty());
    if (settled.isEmpty()) {
      rule.values().stream()
          .max(Comparator.comparingInt(taken -> taken.guess().certainty()))
          .ifPresent(taken -> settled.put(taken.guess().signal(), taken));
    }
    return settled;
  }

  private void take(String topic, int level, Map<String, Track> places) {
    String[] levels = topic.split("/", -1);
    if (level >= levels.length || !levels[level].matches("[A-Za-z0-9][A-Za-z0-9_-]*")) {
      return;
    }
    printers.add(levels[level]);
    Map<Signal, Taken> rule =
        rules.computeIfAbsent(opened(levels, level), key -> new EnumMap<>(Signal.class));
    places.forEach(
        (pointer, track) ->
            Guess.of(topic, pointer, track)
                .ifPresent(
                    guess ->
                        rule.merge(
                            guess.signal(),
                            new Taken(pointer, guess, track),
                            (a, b) -> b.guess().certainty() > a.guess().certainty() ? b : a)));
  }

  private String yaml(String broker) {
    StringBuilder text = new StringBuilder("mappings:\n  proposed:\n");
    rules.forEach(
        (topic, rule) -> {
          boolean plain = rule.values().stream().anyMatch(taken -> taken.pointer().isEmpty());
          text.append("    - topic: ").append(quoted(topic)).append('\n');
          if (plain) {
            boolean number = rule.values().stream().allMatch(taken -> taken.track().isNumber());
            text.append("      payload: ").append(number ? "number" : "text").append('\n');
          }
          text.append("      read:\n");
          rule.forEach((signal, taken) -> text.append(line(signal, taken)));
        });
    text.append("printers:\n");
    printers.forEach(
        name ->
            text.append("  \"")
                .append(name)
                .append("\": { from: { broker: ")
                .append(broker)
                .append(", mapping: proposed } }\n"));
    return text.toString();
  }

  private static String line(Signal signal, Taken taken) {
    String at = quoted(taken.pointer());
    Guess guess = taken.guess();
    String value = at;
    if (!guess.words().isEmpty()) {
      value =
          "{ at: %s, words: { %s } }"
              .formatted(
                  at,
                  guess.words().entrySet().stream()
                      .map(word -> quoted(word.getKey()) + ": " + word.getValue())
                      .collect(Collectors.joining(", ")));
    } else if (guess.scale() != 1) {
      value = String.format(Locale.ROOT, "{ at: %s, scale: %.10f }", at, guess.scale());
    }
    return "        %s: %s   # %s\n"
        .formatted(signal.label(), value, oneLine(taken.track().seen()));
  }

  /** What a printer said must not end the comment that it stands in: YAML 1.1, 5.4 and 5.1. */
  private static String oneLine(String text) {
    return text.replaceAll("[^\\p{Print}\\p{IsAlphabetic}]", "?");
  }

  /** A text in YAML's double quotes; whatever is not plain is written as an escape. */
  private static String quoted(String text) {
    StringBuilder quoted = new StringBuilder("\"");
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      if (c == '"' || c == '\\') {
        quoted.append('\\').append(c);
      } else if ((c >= ' ' && c <= '~') || Character.isLetter(c)) {
        quoted.append(c);
      } else {
        quoted.append(String.format(Locale.ROOT, "\\u%04x", (int) c));
      }
    }
    return quoted.append('"').toString();
  }
}
