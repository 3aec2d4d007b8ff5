package meltkeeper.config;

import java.net.URI;
import java.net.URISyntaxException;
import java.util.Optional;
import java.util.Set;
import meltkeeper.protocol.Fault;

/** The rule for the address of a web server. */
final class WebAddress {

  static final Form<URI> FORM =
      new Form<>("http://host or https://host, with a path", WebAddress::fault, URI::create);

  private static final Set<String> SCHEMES = Set.of("http", "https");

  private WebAddress() {}

  private static Optional<Fault> fault(String text) {
    if (text.contains("@")) {
      return Optional.of(
          Fault.of(
              "", "(hidden)", FORM.allowed(), "name a file that holds the token by token-file"));
    }
    return isAddress(text)
        ? Optional.empty()
        : Optional.of(Fault.of("", text, FORM.allowed(), "begin with https:// or http://"));
  }

  private static boolean isAddress(String text) {
    try {
      URI uri = new URI(text);
      return SCHEMES.contains(String.valueOf(uri.getScheme())) && uri.getHost() != null;
    } catch (URISyntaxException e) {
      return false;
    }
  }
}
