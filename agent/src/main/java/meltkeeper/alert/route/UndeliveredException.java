package meltkeeper.alert.route;

/** A route did not take a message; says why, for a person. */
public final class UndeliveredException extends Exception {

  private final boolean isFinal;

  private UndeliveredException(String reason, boolean isFinal) {
    super(reason);
    this.isFinal = isFinal;
  }

  /** A later try may succeed. */
  public static UndeliveredException forNow(String reason) {
    return new UndeliveredException(reason, false);
  }

  /** The other side will never take this message. */
  public static UndeliveredException forGood(String reason) {
    return new UndeliveredException(reason, true);
  }

  public boolean isFinal() {
    return isFinal;
  }

  public String reason() {
    return String.valueOf(getMessage());
  }

  /** What an exception says, or its name where it says nothing. */
  static String words(Throwable problem) {
    Throwable inner = problem;
    while (inner.getCause() != null && inner.getCause() != inner) {
      inner = inner.getCause();
    }
    String words = inner.getMessage();
    return words == null || words.isBlank() ? inner.getClass().getSimpleName() : words;
  }
}
