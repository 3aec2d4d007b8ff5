package meltkeeper.store.sql;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.type.TypeReference;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.sql.SQLException;
import java.util.TreeMap;
import meltkeeper.jam.WatchState;
import meltkeeper.protocol.HotEnd;

/** What a jam watch remembers, as one JSON object of names and texts. */
final class WatchJson {

  private static final ObjectMapper MAPPER = new ObjectMapper();

  private WatchJson() {}

  static String written(WatchState state) throws SQLException {
    try {
      return MAPPER.writeValueAsString(state.values());
    } catch (JsonProcessingException e) {
      throw new SQLException("a watch cannot be written", e);
    }
  }

  static WatchState read(HotEnd hotEnd, String json) throws SQLException {
    try {
      return new WatchState(
          hotEnd, MAPPER.readValue(json, new TypeReference<TreeMap<String, String>>() {}));
    } catch (JsonProcessingException e) {
      throw new SQLException("the watch of " + hotEnd + " in the store cannot be read", e);
    }
  }
}
