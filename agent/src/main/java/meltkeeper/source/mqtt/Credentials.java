package meltkeeper.source.mqtt;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;

/** A user's name and password, as a broker wants them. Printing them hides the password. */
record Credentials(Optional<String> username, Optional<String> password) {

  /**
   * Reads the password file anew, so that a corrected one is found at the next try.
   *
   * @throws LinkException naming the file, when it cannot be read
   */
  static Credentials of(BrokerSettings broker) throws LinkException {
    if (broker.passwordFile().isEmpty()) {
      return new Credentials(broker.username(), Optional.empty());
    }
    Path file = broker.passwordFile().get();
    try {
      String password = Files.readString(file, StandardCharsets.UTF_8);
      return new Credentials(broker.username(), Optional.of(withoutLineEnd(password)));
    } catch (IOException e) {
      throw new LinkException("password-file " + file + " cannot be read: " + e);
    }
  }

  private static String withoutLineEnd(String text) {
    int end = text.length();
    while (end > 0 && (text.charAt(end - 1) == '\n' || text.charAt(end - 1) == '\r')) {
      end--;
    }
    return text.substring(0, end);
  }

  @Override
  public String toString() {
    return "Credentials[" + username.orElse("") + "]";
  }
}
