package meltkeeper.proposal;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.TreeMap;

/**
 * What was seen on each topic of a broker: the values at each place, by JSON Pointer; the empty
 * pointer for a payload that is a value itself. Mutable, for one thread.
 */
public final class Messages {

  private static final int MANY_TOPICS = 2_000;
  private static final int MANY_PLACES = 20_000;
  private static final int MANY_PLACES_OF_A_TOPIC = 200;
  private static final int LONG_POINTER = 200;
  private static final int DEEP = 8;

  private final ObjectMapper json = new ObjectMapper();
  private final Map<String, Map<String, Track>> topics = new TreeMap<>();
  private int known;

  /** Takes one message; what is neither JSON nor text tells nothing. */
  public void take(String topic, String payload) {
    if (topics.size() >= MANY_TOPICS && !topics.containsKey(topic)) {
      return;
    }
    Map<String, Track> places = topics.computeIfAbsent(topic, name -> new LinkedHashMap<>());
    try {
      JsonNode tree = json.readTree(payload);
      take(places, "", tree, 0);
    } catch (JsonProcessingException e) {
      track(places, "").take(payload.strip());
    }
  }

  private void take(Map<String, Track> places, String pointer, JsonNode node, int depth) {
    if (node.isObject() && depth < DEEP) {
      node.properties()
          .forEach(
              field ->
                  take(
                      places,
                      pointer + "/" + field.getKey().replace("~", "~0").replace("/", "~1"),
                      field.getValue(),
                      depth + 1));
    } else if (node.isArray() && depth < DEEP) {
      for (int index = 0; index < Math.min(node.size(), 4); index++) {
        take(places, pointer + "/" + index, node.get(index), depth + 1);
      }
    } else if (node.isNumber()) {
      track(places, pointer).take(node.doubleValue());
    } else if (node.isTextual()) {
      takeText(track(places, pointer), node.textValue());
    }
  }

  /** A number may come as a string. */
  private static void takeText(Track track, String text) {
    if (text.matches("[-+]?\\d{1,15}(\\.\\d{1,15})?")) {
      track.take(Double.parseDouble(text));
    } else {
      track.take(text);
    }
  }

  /** A broker may publish anything, without end: what is beyond the bounds is forgotten at once. */
  private Track track(Map<String, Track> places, String pointer) {
    if (!places.containsKey(pointer)
        && (known >= MANY_PLACES
            || places.size() >= MANY_PLACES_OF_A_TOPIC
            || pointer.length() > LONG_POINTER)) {
      return new Track();
    }
    return places.computeIfAbsent(
        pointer,
        fresh -> {
          known++;
          return new Track();
        });
  }

  /** By topic, then by place. */
  Map<String, Map<String, Track>> topics() {
    return topics;
  }
}
