package meltkeeper.config;

import java.net.URI;
import java.nio.file.Path;
import java.util.Optional;
import meltkeeper.source.mqtt.BrokerSettings;

/** Reads one broker. */
final class BrokerReader {

  private static final int LEVEL_3_1_1 = 3;

  private final Folder folder;

  /** Reads with relative paths from a folder. */
  BrokerReader(Folder folder) {
    this.folder = folder;
  }

  Optional<BrokerSettings> read(String name, Entry entry) {
    Fields fields = Fields.of(entry, Section.BROKER);
    Optional<URI> url = fields.need(Keys.URL);
    int protocol = fields.get(Keys.PROTOCOL);
    Optional<String> username = fields.find(Keys.USERNAME);
    Optional<Path> passwordFile = folder.secret(fields, Keys.PASSWORD_FILE);
    Optional<Path> caFile = folder.file(fields, Keys.CA_FILE);
    Optional<String> clientId = fields.find(Keys.CLIENT_ID);
    checkTogether(fields, url, protocol);
    return url.map(
        address ->
            new BrokerSettings(name, address, protocol, username, passwordFile, caFile, clientId));
  }

  private static void checkTogether(Fields fields, Optional<URI> url, int protocol) {
    if (url.isPresent() && url.get().getScheme().equals("tcp")) {
      fields
          .entry(Keys.CA_FILE)
          .ifPresent(
              caFile ->
                  caFile.tell(caFile.shown(), "a file only with ssl://", "make the url ssl://"));
    }
    if (protocol == LEVEL_3_1_1 && !fields.has(Keys.USERNAME)) {
      // MQTT 3.1.1, 3.1.2.9: without a user name there must be no password.
      fields
          .entry(Keys.PASSWORD_FILE)
          .ifPresent(
              file ->
                  file.tell(
                      file.shown(),
                      "a password only with a username, at protocol 3.1.1",
                      "add the key username"));
    }
  }
}
