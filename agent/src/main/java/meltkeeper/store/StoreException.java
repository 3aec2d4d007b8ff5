package meltkeeper.store;

/** The store could not be read or written: says what was tried, why it failed and what mends it. */
public final class StoreException extends RuntimeException {

  public StoreException(String message, Throwable cause) {
    super(message, cause);
  }

  public StoreException(String message) {
    super(message);
  }

  /** A recording must not be credited twice. */
  public static StoreException recordingKnown(String name) {
    return new StoreException(
        "the recording " + name + " was credited before; it is never credited twice");
  }
}
