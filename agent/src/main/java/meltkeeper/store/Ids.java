package meltkeeper.store;

import java.nio.charset.StandardCharsets;
import java.util.UUID;

/** Short names that follow from what they name. */
final class Ids {

  private static final int LENGTH = 12;

  private Ids() {}

  /** Twelve hexadecimal digits, the same for the same text. */
  static String of(String what) {
    return UUID.nameUUIDFromBytes(what.getBytes(StandardCharsets.UTF_8))
        .toString()
        .replace("-", "")
        .substring(0, LENGTH);
  }
}
