package meltkeeper.protocol.mapping;

import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import java.io.IOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/**
 * Several JSON Pointers as one tree, so that one pass over a document fills all their cells.
 *
 * <p>Where no pointer leads, the parser skips. Of a key that an object holds twice, the last one
 * counts, with all below it.
 */
final class PathTree {

  private final Optional<Cell> here;
  private final Map<String, PathTree> byKey;
  private final int[] indices;
  private final PathTree[] elements;
  private final Cell[] cells;

  private PathTree(Optional<Cell> here, Map<String, PathTree> byKey) {
    this.here = here;
    this.byKey = byKey;
    TreeMap<Integer, PathTree> byIndex = new TreeMap<>();
    byKey.forEach((key, tree) -> index(key).ifPresent(index -> byIndex.put(index, tree)));
    this.indices = byIndex.keySet().stream().mapToInt(Integer::intValue).toArray();
    this.elements = byIndex.values().toArray(PathTree[]::new);
    List<Cell> all = new ArrayList<>();
    here.ifPresent(all::add);
    byKey.values().forEach(tree -> all.addAll(List.of(tree.cells)));
    this.cells = all.toArray(Cell[]::new);
  }

  /** The tree of the pointers given, each with its cell. */
  static PathTree of(Map<JsonPath, Cell> cells) {
    return at(0, cells);
  }

  private static PathTree at(int depth, Map<JsonPath, Cell> cells) {
    Optional<Cell> here = Optional.empty();
    Map<String, Map<JsonPath, Cell>> below = new HashMap<>();
    for (Map.Entry<JsonPath, Cell> entry : cells.entrySet()) {
      List<String> tokens = entry.getKey().tokens();
      if (tokens.size() == depth) {
        here = Optional.of(entry.getValue());
      } else {
        below
            .computeIfAbsent(tokens.get(depth), key -> new HashMap<>())
            .put(entry.getKey(), entry.getValue());
      }
    }
    Map<String, PathTree> byKey = new HashMap<>();
    below.forEach((key, under) -> byKey.put(key, at(depth + 1, under)));
    return new PathTree(here, byKey);
  }

  /** RFC 6901 section 4: digits without leading zeros; {@code -} is never there to read. */
  private static Optional<Integer> index(String token) {
    boolean canonical = token.matches("0|[1-9][0-9]{0,8}");
    return canonical ? Optional.of(Integer.valueOf(token)) : Optional.empty();
  }

  /**
   * Fills the cells from one document, and empties those that it does not speak of.
   *
   * @return false when there is no document, or anything follows it
   * @throws IOException when the document is torn
   */
  boolean fill(JsonParser in) throws IOException {
    JsonToken first = in.nextToken();
    if (first == null) {
      return false;
    }
    value(in, first);
    return in.nextToken() == null;
  }

  private void value(JsonParser in, JsonToken token) throws IOException {
    for (Cell cell : cells) {
      cell.clear();
    }
    if (here.isPresent()) {
      here.get().take(in, token);
    }
    if (token == JsonToken.START_OBJECT) {
      object(in);
    } else if (token == JsonToken.START_ARRAY) {
      list(in);
    }
  }

  private void object(JsonParser in) throws IOException {
    if (byKey.isEmpty()) {
      in.skipChildren();
      return;
    }
    for (String key = in.nextFieldName(); key != null; key = in.nextFieldName()) {
      JsonToken token = in.nextToken();
      PathTree below = byKey.get(key);
      if (below == null) {
        in.skipChildren();
      } else {
        below.value(in, token);
      }
    }
  }

  private void list(JsonParser in) throws IOException {
    if (indices.length == 0) {
      in.skipChildren();
      return;
    }
    int next = 0;
    JsonToken token = in.nextToken();
    for (int i = 0; token != JsonToken.END_ARRAY; i++, token = in.nextToken()) {
      if (next < indices.length && indices[next] == i) {
        elements[next++].value(in, token);
      } else {
        in.skipChildren();
      }
    }
  }
}
