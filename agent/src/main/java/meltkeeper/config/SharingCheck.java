package meltkeeper.config;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import meltkeeper.protocol.mapping.Mapping;
import meltkeeper.protocol.mapping.Route;
import meltkeeper.protocol.mapping.TopicPattern;

/**
 * Whether printers can share what they share: not a port, and a mapping only if it tells them
 * apart.
 */
record SharingCheck(
    Map<String, PrinterSettings> printers,
    Map<String, Entry> printerEntries,
    Map<String, Mapping> mappings,
    Map<String, Entry> mappingEntries) {

  void tell() {
    Map<String, String> printerOfPort = new HashMap<>();
    Map<From.Mqtt, Set<String>> printersOfMapping = new LinkedHashMap<>();
    printerEntries.forEach(
        (name, entry) -> {
          PrinterSettings printer = printers.get(name);
          if (printer != null && printer.from() instanceof From.Mqtt mqtt) {
            printersOfMapping.computeIfAbsent(mqtt, key -> new LinkedHashSet<>()).add(name);
          } else if (printer != null) {
            tellShared(printer, entry, printerOfPort);
          }
        });
    printersOfMapping.forEach(this::tellUnnamed);
  }

  private static void tellShared(
      PrinterSettings printer, Entry entry, Map<String, String> printerOfPort) {
    Key<?> key = printer.from() instanceof From.Serial ? Keys.SERIAL : Keys.TCP;
    Entry port = below(below(entry, Keys.PRINTER_FROM), key);
    String other = printerOfPort.putIfAbsent(port.shown(), printer.name());
    if (other != null) {
      port.tell(port.shown(), "one printer on each port", "it is that of " + other + " already");
    }
  }

  private void tellUnnamed(From.Mqtt use, Set<String> users) {
    Mapping mapping = mappings.get(use.mapping());
    Entry entry = mappingEntries.get(use.mapping());
    if (mapping == null || entry == null || Route.fault(mapping, users).isEmpty()) {
      return;
    }
    for (Entry topic : topics(entry)) {
      if (!topic.shown().contains(TopicPattern.PRINTER)) {
        topic.tell(
            topic.shown(),
            "a topic with "
                + TopicPattern.PRINTER
                + ", for several printers use this mapping: "
                + String.join(", ", users),
            "put " + TopicPattern.PRINTER + " where the printer's name stands");
      }
    }
  }

  private static List<Entry> topics(Entry mapping) {
    List<Entry> topics = new ArrayList<>();
    for (Entry rule : mapping.elements()) {
      topics.add(below(rule, Keys.TOPIC));
    }
    return topics;
  }

  private static Entry below(Entry entry, Key<?> key) {
    Entry child = entry.children().get(key.label());
    return child == null ? entry : child;
  }
}
