package meltkeeper.config;

import java.nio.file.Path;
import java.time.Duration;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import meltkeeper.alert.AlertSettings;
import meltkeeper.metrics.MetricsSettings;
import meltkeeper.part.Costs;
import meltkeeper.part.Kind;
import meltkeeper.protocol.mapping.Mapping;
import meltkeeper.protocol.mapping.Route;
import meltkeeper.source.mqtt.BrokerSettings;
import meltkeeper.web.guard.WebSettings;

/**
 * A configuration without faults. All maps are by name and keep the order of the file. Immutable.
 *
 * @param storeUrl JDBC URL of the store, its file's path being absolute
 * @param web where the page and the metrics are served, and to whom
 * @param zone the shop's time zone, for reports
 * @param kinds those of the file, then the known ones that it does not name
 * @param costs empty when the shop names none
 * @param falseAlarmEvery printing time wanted between two false alarms of the jam watch
 * @param alerts who is called, and when
 * @param commands where buttons and scanners tell of parts, if anywhere
 * @param metrics what the shop's monitoring is given
 * @param copies the daily copies of the store
 */
public record Settings(
    String storeUrl,
    WebSettings web,
    ZoneId zone,
    Map<String, BrokerSettings> brokers,
    Map<String, Mapping> mappings,
    Map<String, PrinterSettings> printers,
    Map<String, Kind> kinds,
    Optional<Costs> costs,
    Duration falseAlarmEvery,
    AlertSettings alerts,
    Optional<CommandTopic> commands,
    MetricsSettings metrics,
    CopySettings copies) {

  public Settings {
    brokers = ordered(brokers);
    mappings = ordered(mappings);
    printers = ordered(printers);
    kinds = ordered(kinds);
  }

  /** The file that the store is kept in. */
  public Path storeFile() {
    return StoreUrl.file(storeUrl, Path.of(""));
  }

  /** The mappings in use at a broker, each with the printers that are read with it. */
  public List<Route> routes(String broker) {
    Map<String, Set<String>> printersOf = new LinkedHashMap<>();
    for (PrinterSettings printer : printers.values()) {
      if (printer.from() instanceof From.Mqtt mqtt && mqtt.broker().equals(broker)) {
        printersOf
            .computeIfAbsent(mqtt.mapping(), name -> new LinkedHashSet<>())
            .add(printer.name());
      }
    }
    List<Route> routes = new ArrayList<>();
    mappings.forEach(
        (name, mapping) -> {
          Set<String> users = printersOf.getOrDefault(name, Set.of());
          if (!users.isEmpty()) {
            routes.add(new Route(mapping, users));
          }
        });
    return List.copyOf(routes);
  }

  private static <T> Map<String, T> ordered(Map<String, T> map) {
    return Collections.unmodifiableMap(new LinkedHashMap<>(map));
  }
}
