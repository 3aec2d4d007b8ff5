package meltkeeper.jam;

import java.util.SortedMap;
import java.util.TreeMap;
import meltkeeper.protocol.HotEnd;

/**
 * All that the watch of a hot end remembers, for keeping. A watch restored from it goes on exactly
 * as the one it was taken from.
 *
 * @param values by name, as text; a name that is missing is one not yet known
 */
public record WatchState(HotEnd hotEnd, SortedMap<String, String> values) {

  public WatchState {
    values = java.util.Collections.unmodifiableSortedMap(new TreeMap<>(values));
  }
}
