package meltkeeper.store;

/** The store could not be read or written: says what was tried, and the store's own words. */
public final class StoreException extends RuntimeException {

  public StoreException(String message, Throwable cause) {
    super(message, cause);
  }

  public StoreException(String message) {
    super(message);
  }
}
