package meltkeeper.protocol;

/**
 * Something wrong in what a person or a program gave us, told so that it can be mended.
 *
 * @param where file and line, or topic; empty while nobody knows it
 * @param key the key, column or field
 * @param found the value as found
 * @param allowed what is allowed there
 * @param mend what to do; empty when {@code allowed} says it all
 */
public record Fault(String where, String key, String found, String allowed, String mend) {

  /** A fault whose place the caller adds with {@link #at(String)}. */
  public static Fault of(String key, Object found, String allowed, String mend) {
    return new Fault("", key, String.valueOf(found), allowed, mend);
  }

  /** A fault that needs no further remedy than what is allowed. */
  public static Fault of(String key, Object found, String allowed) {
    return of(key, found, allowed, "");
  }

  /** The same fault with its place. */
  public Fault at(String place) {
    return new Fault(place, key, found, allowed, mend);
  }

  /** The same fault with its key below another: {@code hot-above} in {@code printers.heron}. */
  public Fault within(String parent) {
    return new Fault(where, key.isEmpty() ? parent : parent + "." + key, found, allowed, mend);
  }

  /** One line: {@code file:12: printers.heron.every: "2x" is not allowed: ...; mend ...}. */
  @Override
  public String toString() {
    StringBuilder text = new StringBuilder();
    if (!where.isEmpty()) {
      text.append(where).append(": ");
    }
    if (!key.isEmpty()) {
      text.append(key).append(": ");
    }
    text.append("found ").append(shown(found)).append("; allowed: ").append(allowed);
    if (!mend.isEmpty()) {
      text.append("; ").append(mend);
    }
    return text.toString();
  }

  private static String shown(String value) {
    String head = value.length() <= 120 ? value : value.substring(0, 117) + "...";
    return "\"" + head.replaceAll("\\p{Cntrl}", " ") + "\"";
  }
}
