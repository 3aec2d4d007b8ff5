package meltkeeper.source.mqtt;

import java.io.EOFException;

/** A connection to a broker did not come about; the message says why, for a person. */
final class LinkException extends Exception {

  LinkException(String reason) {
    super(reason);
  }

  /** The innermost cause says most, where it says anything. */
  static String explain(Throwable problem) {
    Throwable inner = problem;
    while (inner.getCause() != null && inner.getCause() != inner) {
      inner = inner.getCause();
    }
    if (inner instanceof EOFException) {
      return "the broker hung up";
    }
    String words = inner.getMessage();
    return words == null || words.isBlank() ? inner.getClass().getSimpleName() : words;
  }
}
