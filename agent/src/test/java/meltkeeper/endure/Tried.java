package meltkeeper.endure;

import java.util.Locale;

/**
 * What came of one kind of fault.
 *
 * @param fault in words
 * @param times how often it was tried
 * @param lostNanos hot time lost in all of them
 * @param doubledNanos hot time counted twice in all of them
 * @param seen what the owner sees
 */
public record Tried(String fault, int times, long lostNanos, long doubledNanos, String seen) {

  public static final String HEAD =
      "| fault | tried | hours lost | hours doubled | what the owner sees |\n|---|---|---|---|---|";

  /** Its row of the table in docs/reliability.md. */
  public String row() {
    return String.format(
        Locale.ROOT,
        "| %s | %,d | %s | %s | %s |",
        fault,
        times,
        hours(lostNanos),
        hours(doubledNanos),
        seen);
  }

  private static String hours(long nanos) {
    return nanos == 0 ? "0" : String.format(Locale.ROOT, "%.6f", nanos / 3.6e12);
  }
}
