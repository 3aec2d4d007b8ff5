package meltkeeper.protocol;

import java.util.Locale;

/**
 * Something that could not be read, or that must not be credited, and why.
 *
 * @param reason the class of it, for counting
 * @param detail the offending value and what is allowed, for a person; a line of at most {@value
 *     #LONGEST} characters, whatever it was made of
 */
public record Rejected(Reason reason, String detail) {

  /** A longer detail is cut: whoever sent it must not fill logs and memory. */
  public static final int LONGEST = 1_000;

  public Rejected {
    String cut = detail.length() <= LONGEST ? detail : detail.substring(0, LONGEST - 3) + "...";
    detail = cut.chars().anyMatch(Character::isISOControl) ? withoutControls(cut) : cut;
  }

  /** Line ends and escapes of a hostile sender must not write lines of their own into a log. */
  private static String withoutControls(String text) {
    return text.replaceAll("\\p{Cntrl}|[\\x80-\\x9f]", " ");
  }

  /** The classes of rejection, a closed list known to recordings and metrics. */
  public enum Reason {
    /** A line or document that ends or breaks in the middle. */
    TORN_LINE,
    /** Text where a number, a time or a known word was due. */
    NOT_A_NUMBER,
    /** A number that cannot be true. */
    OUT_OF_RANGE,
    /** Older than what is credited already. */
    LATE,
    /** Told before. */
    DUPLICATE,
    /** Kept by the broker from before: sets the state, credits nothing. */
    RETAINED,
    /** From a printer that the configuration does not list. */
    UNKNOWN_PRINTER,
    /** A line of no known form. */
    UNKNOWN_LINE,
    /** A line whose checksum does not match. */
    BAD_CHECKSUM,
    /** A line or payload over the limit. */
    TOO_LONG;

    private final String label = name().toLowerCase(Locale.ROOT).replace('_', '-');

    /** The name used outside, {@code torn-line} and the like. */
    public String label() {
      return label;
    }

    /** False for what is counted but is nobody's mistake: late, duplicate, retained. */
    public boolean isFault() {
      return this != LATE && this != DUPLICATE && this != RETAINED;
    }
  }
}
