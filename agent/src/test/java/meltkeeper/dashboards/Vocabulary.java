package meltkeeper.dashboards;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The metrics that can be asked for, each with its labels.
 *
 * @param recorded names of recording rules, whose labels are those of what they record
 */
record Vocabulary(Map<String, Set<String>> labels, Set<String> recorded) {

  private static final Pattern SAMPLE = Pattern.compile("(?m)^(\\w+)(?:\\{(.*)})? [^ ]+$");
  private static final Pattern ASKED =
      Pattern.compile(
          "(?<![\\w:$\"])((?:\\w+:)?(?:meltkeeper|jvm|process|system)_\\w+(?::\\w+)?)(\\{[^{}]*})?");
  private static final Pattern LABEL = Pattern.compile("(\\w+)\\s*(?:=~|!~|!=|=)\\s*(?:\\\\?\"|%)");
  private static final Pattern GROUPED =
      Pattern.compile("\\b(?:by|without|on|ignoring)\\s*\\(([^)]*)\\)");
  private static final Pattern NAMED = Pattern.compile("\\{\\{\\s*(?:\\$labels\\.)?(\\w+)\\s*}}");
  private static final Set<String> OF_PROMETHEUS = Set.of("job", "instance");

  /** That of a scrape, and of the rules that record from it. */
  static Vocabulary of(String scrape, List<String> recorded) {
    Map<String, Set<String>> labels = new HashMap<>();
    Matcher sample = SAMPLE.matcher(scrape);
    while (sample.find()) {
      Set<String> names = labels.computeIfAbsent(sample.group(1), name -> new HashSet<>());
      if (sample.group(2) != null) {
        Matcher label = LABEL.matcher(sample.group(2));
        while (label.find()) {
          names.add(label.group(1));
        }
      }
    }
    return new Vocabulary(labels, Set.copyOf(recorded));
  }

  /** What a query asks for that nobody has, in words; empty when all is well. */
  List<String> unknownIn(String query) {
    List<String> unknown = new ArrayList<>();
    Matcher asked = ASKED.matcher(query);
    while (asked.find()) {
      String name = asked.group(1);
      if (!labels.containsKey(name) && !recorded.contains(name)) {
        unknown.add("the metric " + name);
      } else if (asked.group(2) != null) {
        Matcher label = LABEL.matcher(asked.group(2));
        while (label.find()) {
          if (!has(name, label.group(1))) {
            unknown.add("the label " + label.group(1) + " of " + name);
          }
        }
      }
    }
    Matcher grouped = GROUPED.matcher(query);
    while (grouped.find()) {
      for (String label : grouped.group(1).split("\\s*,\\s*", -1)) {
        if (!hasAnywhere(label)) {
          unknown.add("the label " + label);
        }
      }
    }
    return unknown;
  }

  /** Labels that a text such as a legend names and that nobody has. */
  List<String> unknownNamesIn(String text) {
    return NAMED
        .matcher(text)
        .results()
        .map(name -> name.group(1))
        .filter(l -> !hasAnywhere(l))
        .toList();
  }

  private boolean has(String metric, String label) {
    return recorded.contains(metric)
        ? hasAnywhere(label)
        : OF_PROMETHEUS.contains(label) || labels.getOrDefault(metric, Set.of()).contains(label);
  }

  private boolean hasAnywhere(String label) {
    return OF_PROMETHEUS.contains(label)
        || labels.values().stream().anyMatch(names -> names.contains(label));
  }
}
