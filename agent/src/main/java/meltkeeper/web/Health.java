package meltkeeper.web;

import com.fasterxml.jackson.annotation.JsonIgnore;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * Whether the agent does its work. A source that is down is shown, but only a store that takes no
 * commits makes the agent unwell: printers may be switched off.
 *
 * @param status {@code ok} or {@code store-trouble}
 * @param store {@code ok}, or why it takes no commits
 * @param sources by name: {@code up} or {@code down}
 */
record Health(String status, String store, SortedMap<String, String> sources) {

  static Health of(Overview overview) {
    SortedMap<String, String> sources = new TreeMap<>();
    for (Map.Entry<String, Boolean> source : overview.sources().entrySet()) {
      sources.put(source.getKey(), source.getValue() ? "up" : "down");
    }
    return new Health(
        overview.storeTrouble().isEmpty() ? "ok" : "store-trouble",
        overview.storeTrouble().orElse("ok"),
        sources);
  }

  @JsonIgnore
  boolean isWell() {
    return status.equals("ok");
  }
}
