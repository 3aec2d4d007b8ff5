package meltkeeper.web.guard;

import java.net.InetAddress;
import java.net.UnknownHostException;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * Where the page and the API are served, and to whom.
 *
 * @param host to bind to
 * @param port to bind to; 0 for any free one
 * @param names by which browsers may ask for the page, besides addresses and this host
 * @param token that writes need; empty for none
 * @param tokenForReads true when reads need it too
 * @param certificate empty for plain HTTP
 */
public record WebSettings(
    String host,
    int port,
    Set<String> names,
    Optional<TokenHash> token,
    boolean tokenForReads,
    Optional<CertificateFiles> certificate) {

  /** A key and the certificates that go with it, both PEM. */
  public record CertificateFiles(Path key, Path certificates) {}

  public WebSettings {
    names = names.stream().map(n -> n.toLowerCase(Locale.ROOT)).collect(Collectors.toSet());
  }

  /** Plain HTTP without a token, as suits loopback. */
  public static WebSettings plain(String host, int port) {
    return new WebSettings(host, port, Set.of(), Optional.empty(), false, Optional.empty());
  }

  /** True when nobody outside this computer can reach it. */
  public boolean isLoopback() {
    try {
      return InetAddress.getByName(host).isLoopbackAddress();
    } catch (UnknownHostException e) {
      return false;
    }
  }

  /** {@code http} or {@code https}. */
  public String scheme() {
    return certificate.isPresent() ? "https" : "http";
  }

  /** The host as addresses hold it: with brackets around an IPv6 address. */
  public String inAddress() {
    return host.contains(":") ? "[" + host + "]" : host;
  }

  /** {@code host:port}. */
  @Override
  public String toString() {
    return inAddress() + ":" + port;
  }
}
