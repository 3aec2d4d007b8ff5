package meltkeeper.web;

import com.fasterxml.jackson.annotation.JsonIgnore;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * Whether the agent does its work. A source or a route of alerts that is down is shown, but only a
 * store that takes no commits makes the agent unwell: printers may be switched off.
 *
 * @param status {@code ok} or {@code store-trouble}
 * @param store {@code ok}, or why it takes no commits
 * @param sources by name: {@code up} or {@code down}
 * @param routes of alerts, by name: {@code ok}, or why the last try failed
 */
record Health(
    String status,
    String store,
    SortedMap<String, String> sources,
    SortedMap<String, String> routes) {

  static Health of(Overview overview) {
    SortedMap<String, String> sources = new TreeMap<>();
    for (Map.Entry<String, Boolean> source : overview.sources().entrySet()) {
      sources.put(source.getKey(), source.getValue() ? "up" : "down");
    }
    SortedMap<String, String> routes = new TreeMap<>();
    overview
        .routeTroubles()
        .forEach((name, trouble) -> routes.put(name, trouble.isEmpty() ? "ok" : trouble));
    return new Health(
        overview.storeTrouble().isEmpty() ? "ok" : "store-trouble",
        overview.storeTrouble().orElse("ok"),
        sources,
        routes);
  }

  @JsonIgnore
  boolean isWell() {
    return status.equals("ok");
  }
}
