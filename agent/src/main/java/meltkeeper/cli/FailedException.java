package meltkeeper.cli;

/** A command could not do its work; the message says why in words for a person. */
final class FailedException extends RuntimeException {

  FailedException(String message) {
    super(message);
  }
}
