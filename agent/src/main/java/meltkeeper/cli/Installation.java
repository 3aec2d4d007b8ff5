package meltkeeper.cli;

import java.util.UUID;
import meltkeeper.config.Settings;

/** Names this installation to brokers: the same over restarts, another for another store. */
final class Installation {

  private Installation() {}

  static String of(Settings settings) {
    String host = System.getenv().getOrDefault("HOSTNAME", "");
    return UUID.nameUUIDFromBytes(
            (host + " " + settings.storeUrl()).getBytes(java.nio.charset.StandardCharsets.UTF_8))
        .toString()
        .substring(0, 8);
  }
}
