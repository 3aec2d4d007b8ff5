package meltkeeper.config;

import java.net.URI;
import java.net.URISyntaxException;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import meltkeeper.protocol.Fault;

/** The rule for a broker's URL. */
final class BrokerUrl {

  static final String ALLOWED = "tcp://host:port or ssl://host:port";

  /** Ports registered with IANA for MQTT, plain and over TLS. */
  private static final Map<String, Integer> USUAL_PORTS = Map.of("tcp", 1883, "ssl", 8883);

  private static final Pattern USER_INFO = Pattern.compile("//[^/]*@");

  private BrokerUrl() {}

  /** What is wrong with the text; what stands before an @ is never shown. */
  static Optional<Fault> fault(String text) {
    String shown = USER_INFO.matcher(text).replaceFirst("//(hidden)@");
    if (text.contains("@")) {
      return Optional.of(
          Fault.of(
              "",
              shown.contains("(hidden)") ? shown : "(hidden)",
              ALLOWED,
              "name the user by username, and a file that holds the password by password-file"));
    }
    return parsed(text).isPresent()
        ? Optional.empty()
        : Optional.of(Fault.of("", text, ALLOWED, mend(text)));
  }

  /** The URL with its port. */
  static URI of(String text) {
    return parsed(text).orElseThrow();
  }

  private static Optional<URI> parsed(String text) {
    try {
      URI uri = new URI(text);
      Integer usualPort = USUAL_PORTS.get(String.valueOf(uri.getScheme()));
      if (usualPort == null || uri.getHost() == null || !isBare(uri)) {
        return Optional.empty();
      }
      int port = uri.getPort() < 0 ? usualPort : uri.getPort();
      return port < 1 || port > HostPort.MAX_PORT
          ? Optional.empty()
          : Optional.of(new URI(uri.getScheme(), null, uri.getHost(), port, null, null, null));
    } catch (URISyntaxException e) {
      return Optional.empty();
    }
  }

  private static boolean isBare(URI uri) {
    return uri.getRawUserInfo() == null
        && (uri.getRawPath().isEmpty() || uri.getRawPath().equals("/"))
        && uri.getRawQuery() == null
        && uri.getRawFragment() == null;
  }

  private static String mend(String text) {
    int end = text.indexOf("://");
    if (end < 0) {
      return "write tcp:// before it, or ssl:// for TLS";
    }
    String scheme = text.substring(0, end);
    if (USUAL_PORTS.containsKey(scheme)) {
      return "a host's name has letters, digits, dots and dashes, and a port is 1 to 65535";
    }
    return scheme.endsWith("s") ? "write ssl:// for TLS" : "write tcp://, or ssl:// for TLS";
  }
}
