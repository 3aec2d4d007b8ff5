package meltkeeper.web.guard;

import java.util.Locale;
import java.util.Set;
import java.util.regex.Pattern;

/**
 * The hosts that a request may be meant for. A page of another site that has its own name point
 * here is kept out by this: it can ask for its name only. An address stands for itself, as nobody
 * can make another host's name of it.
 *
 * @param own the host bound to
 * @param names more that the owner lists
 */
record HostNames(String own, Set<String> names) {

  private static final Pattern HOST =
      Pattern.compile("(?<name>\\[[0-9A-Fa-f:.]+]|[^:\\[\\]]+)(:[0-9]{1,5})?");
  private static final Pattern IPV4 = Pattern.compile("[0-9]{1,3}(\\.[0-9]{1,3}){3}");

  /** True when a Host header names this server. */
  boolean admits(String header) {
    var host = HOST.matcher(header);
    if (!host.matches()) {
      return false;
    }
    String name = host.group("name").toLowerCase(Locale.ROOT);
    return name.startsWith("[")
        || IPV4.matcher(name).matches()
        || name.equals("localhost")
        || name.equals(own.toLowerCase(Locale.ROOT))
        || names.contains(name);
  }
}
