package meltkeeper.alert.route;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import javax.net.ssl.SSLContext;
import meltkeeper.trust.Trust;

/**
 * Passwords, tokens and certificates, read at every use, so that a changed one needs no restart.
 */
final class Secrets {

  private Secrets() {}

  static String in(Path file) throws UndeliveredException {
    try {
      return Files.readString(file).strip();
    } catch (IOException e) {
      throw UndeliveredException.forNow(file + " cannot be read: " + e);
    }
  }

  static SSLContext trust(Optional<Path> caFile) throws UndeliveredException {
    try {
      return Trust.in(caFile);
    } catch (IOException e) {
      throw UndeliveredException.forNow(String.valueOf(e.getMessage()));
    }
  }
}
