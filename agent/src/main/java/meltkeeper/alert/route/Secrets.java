package meltkeeper.alert;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

/** Passwords and tokens, read at every use, so that a changed one needs no restart. */
final class Secrets {

  private Secrets() {}

  static String in(Path file) throws UndeliveredException {
    try {
      return Files.readString(file).strip();
    } catch (IOException e) {
      throw UndeliveredException.forNow(file + " cannot be read: " + e);
    }
  }
}
