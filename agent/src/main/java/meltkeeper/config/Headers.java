package meltkeeper.config;

import java.util.LinkedHashMap;
import java.util.Map;

/** Reads headers of HTTP requests. */
final class Headers {

  private Headers() {}

  /** By name, in the order of the file; tells names that none can have. */
  static Map<String, String> read(Entry section) {
    Map<String, String> headers = new LinkedHashMap<>();
    section
        .children()
        .forEach(
            (name, value) -> {
              if (!name.matches("[A-Za-z0-9-]{1,60}")) {
                value.tell(name, "a header's name: letters, digits and dashes", "");
              }
              Fields.read(value, AlertKeys.HEADER).ifPresent(text -> headers.put(name, text));
            });
    return headers;
  }
}
