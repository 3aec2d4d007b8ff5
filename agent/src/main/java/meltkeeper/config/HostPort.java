package meltkeeper.config;

import java.net.URI;
import java.net.URISyntaxException;
import java.util.Optional;

/**
 * An address to listen on or to reach.
 *
 * @param host a name or an address, IPv6 without brackets
 * @param port 0 to 65535
 */
public record HostPort(String host, int port) {

  static final int MAX_PORT = 65_535;

  /** The address of {@code host:port} or {@code [IPv6]:port}; empty for anything else. */
  static Optional<HostPort> of(String text) {
    try {
      URI uri = new URI("any://" + text);
      boolean bare = uri.getRawUserInfo() == null && uri.getRawPath().isEmpty();
      return uri.getHost() == null
              || !bare
              || uri.getRawQuery() != null
              || uri.getRawFragment() != null
              || uri.getPort() < 0
              || uri.getPort() > MAX_PORT
          ? Optional.empty()
          : Optional.of(new HostPort(uri.getHost().replaceAll("[\\[\\]]", ""), uri.getPort()));
    } catch (URISyntaxException e) {
      return Optional.empty();
    }
  }

  /** {@code host:port}, with brackets around an IPv6 address. */
  @Override
  public String toString() {
    return (host.contains(":") ? "[" + host + "]" : host) + ":" + port;
  }
}
