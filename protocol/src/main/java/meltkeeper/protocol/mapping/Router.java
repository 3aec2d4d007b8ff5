package meltkeeper.protocol.mapping;

import com.fasterxml.jackson.core.JsonFactory;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedSet;
import java.util.TreeSet;
import meltkeeper.protocol.Fault;
import meltkeeper.protocol.Rejected;
import meltkeeper.protocol.Rejected.Reason;

/** Finds who reads a topic's messages. */
final class Router {

  /**
   * What to do with a topic's messages.
   *
   * @param readers one or more, or none when refused
   * @param refusal why nobody reads them, without the place
   */
  record Way(List<MessageReader> readers, Optional<Refusal> refusal) {}

  /** Why a topic's messages are not read. */
  record Refusal(Reason reason, Fault fault) {
    Rejected at(String place) {
      return new Rejected(reason, fault.at(place).toString());
    }
  }

  private final List<Route> routes;
  private final JsonFactory json;
  private final Map<Map<String, List<MessageRule>>, List<MessageReader>> compiled = new HashMap<>();

  Router(List<Route> routes, JsonFactory json) {
    this.routes = List.copyOf(routes);
    this.json = json;
  }

  Way way(String topic) {
    Map<String, List<MessageRule>> rules = new LinkedHashMap<>();
    Optional<String> stranger = Optional.empty();
    SortedSet<String> listed = new TreeSet<>();
    for (Route route : routes) {
      for (MessageRule rule : route.mapping().rules()) {
        if (rule.topic().matches(topic)) {
          String printer = printer(route, rule.topic(), topic);
          listed.addAll(route.printers());
          if (route.printers().contains(printer)) {
            rules.computeIfAbsent(printer, name -> new ArrayList<>()).add(rule);
          } else {
            stranger = Optional.of(printer);
          }
        }
      }
    }
    return rules.isEmpty()
        ? new Way(List.of(), Optional.of(refusal(topic, stranger, listed)))
        : new Way(compiled.computeIfAbsent(rules, this::compile), Optional.empty());
  }

  private static String printer(Route route, TopicPattern pattern, String topic) {
    return pattern.capture(topic).orElseGet(() -> route.printers().iterator().next());
  }

  private Refusal refusal(String topic, Optional<String> stranger, SortedSet<String> listed) {
    return stranger
        .map(
            printer ->
                new Refusal(
                    Reason.UNKNOWN_PRINTER,
                    Fault.of(
                        "printer",
                        printer,
                        String.join(", ", listed),
                        "list it under printers, or leave its topic out")))
        .orElseGet(
            () ->
                new Refusal(
                    Reason.UNKNOWN_LINE, Fault.of("topic", topic, String.join(", ", patterns()))));
  }

  private SortedSet<String> patterns() {
    SortedSet<String> patterns = new TreeSet<>();
    for (Route route : routes) {
      route.mapping().rules().forEach(rule -> patterns.add(rule.topic().toString()));
    }
    return patterns;
  }

  /**
   * Rules that read the same payload with the same time become one reader, so that a message is
   * parsed once and its readings come in order.
   */
  private List<MessageReader> compile(Map<String, List<MessageRule>> rules) {
    List<MessageReader> readers = new ArrayList<>();
    rules.forEach(
        (printer, itsRules) -> {
          Map<Optional<TimeRule>, List<ValueRule>> documents = new LinkedHashMap<>();
          for (MessageRule rule : itsRules) {
            if (rule.form() == PayloadForm.JSON) {
              documents
                  .computeIfAbsent(rule.time(), time -> new ArrayList<>())
                  .addAll(rule.values());
            } else {
              readers.add(new PlainReader(printer, rule.values().get(0)));
            }
          }
          documents.forEach(
              (time, values) ->
                  readers.add(
                      new JsonReader(json, printer, time, values.stream().distinct().toList())));
        });
    return List.copyOf(readers);
  }
}
