package meltkeeper.config;

import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Set;

/** Reads headers of HTTP requests. */
final class Headers {

  /** RFC 9110, 11.6.2 and 11.7.2, and RFC 6265, 4.2: these say who asks. */
  private static final Set<String> SECRET =
      Set.of("authorization", "proxy-authorization", "cookie");

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
              if (SECRET.contains(name.toLowerCase(Locale.ROOT))) {
                value.tell(
                    "(hidden)",
                    "headers without secrets",
                    "keep the token in a file and name it by token-file");
              }
              Fields.read(value, AlertKeys.HEADER).ifPresent(text -> headers.put(name, text));
            });
    return headers;
  }
}
