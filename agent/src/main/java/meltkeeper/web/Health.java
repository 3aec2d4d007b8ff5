package meltkeeper.web;

import com.fasterxml.jackson.annotation.JsonIgnore;
import java.util.SortedMap;
import java.util.TreeMap;
import meltkeeper.web.view.AgentView;

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

  static Health of(AgentView agent) {
    SortedMap<String, String> sources = new TreeMap<>();
    agent.sources().forEach((name, up) -> sources.put(name, up ? "up" : "down"));
    SortedMap<String, String> routes = new TreeMap<>();
    agent
        .routeTroubles()
        .forEach((name, trouble) -> routes.put(name, trouble.isEmpty() ? "ok" : trouble));
    var trouble = agent.live().trouble();
    return new Health(
        trouble.isEmpty() ? "ok" : "store-trouble", trouble.orElse("ok"), sources, routes);
  }

  @JsonIgnore
  boolean isWell() {
    return status.equals("ok");
  }
}
