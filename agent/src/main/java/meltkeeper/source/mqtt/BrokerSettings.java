package meltkeeper.source.mqtt;

import java.net.URI;
import java.nio.file.Path;
import java.util.Optional;

/**
 * How to reach one broker.
 *
 * @param name its name in the configuration
 * @param url {@code tcp://host:port} or {@code ssl://host:port}
 * @param protocol 5, or 3 for MQTT 3.1.1
 * @param passwordFile read at every connect, so that a changed password needs no restart
 * @param caFile certificates in PEM that are trusted instead of the computer's own
 * @param clientId empty for one that follows from the installation
 */
public record BrokerSettings(
    String name,
    URI url,
    int protocol,
    Optional<String> username,
    Optional<Path> passwordFile,
    Optional<Path> caFile,
    Optional<String> clientId) {

  public BrokerSettings {
    if (protocol != 5 && protocol != 3) {
      throw new IllegalArgumentException("protocol is " + protocol + "; allowed: 5 or 3");
    }
  }

  /** The same without a client id of its own: two clients of one name throw each other off. */
  public BrokerSettings unnamed() {
    return new BrokerSettings(
        name, url, protocol, username, passwordFile, caFile, Optional.empty());
  }
}
