package meltkeeper.protocol;

import java.time.Instant;
import java.time.LocalDate;
import java.time.Month;
import java.time.ZoneOffset;
import java.time.chrono.IsoChronology;
import java.time.format.DateTimeFormatter;
import java.time.format.DateTimeFormatterBuilder;
import java.time.temporal.ChronoField;
import java.util.Locale;

/**
 * Nanoseconds since 1970 from and to the extended form of ISO 8601.
 *
 * <p>A time is read in that form, with the latitude of RFC 3339: date and time parted by {@code T}
 * or a space, seconds with any number of decimals after a point or comma (what is finer than a
 * nanosecond is cut off), then {@code Z} or an offset as {@code +01:00}, {@code +0100} or {@code
 * +01}. A leap second counts as the first second of the next minute.
 */
public final class IsoTime {

  /** Instead of a time: the text is none. Negative, as no time here is. */
  public static final long NOT_A_TIME = -1;

  /** Instead of a time: before 1970, or beyond what nanoseconds in a {@code long} can hold. */
  public static final long OUT_OF_RANGE = -2;

  /** The times that can be read, in words. */
  public static final String ALLOWED =
      "a time such as 2026-03-02T08:00:00.000Z, with Z or an offset, from 1970 to 2262";

  private static final DateTimeFormatter UTC =
      new DateTimeFormatterBuilder()
          .appendPattern("uuuu-MM-dd'T'HH:mm:ss")
          .appendFraction(ChronoField.NANO_OF_SECOND, 3, 9, true)
          .appendLiteral('Z')
          .toFormatter(Locale.ROOT)
          .withZone(ZoneOffset.UTC);

  private static final long NANOS = 1_000_000_000L;
  private static final long LAST_SECOND = Long.MAX_VALUE / NANOS - 1;

  private final String text;
  private int at;
  private boolean broken;

  private IsoTime(String text) {
    this.text = text;
  }

  /**
   * Nanoseconds since 1970-01-01T00:00:00Z; never throws.
   *
   * @return 0 or more, or {@link #NOT_A_TIME} or {@link #OUT_OF_RANGE}
   */
  public static long nanos(String text) {
    return new IsoTime(text).read();
  }

  /** The time in UTC with three to nine decimals, as {@link #nanos} reads it. */
  public static String text(long nanos) {
    return UTC.format(
        Instant.ofEpochSecond(Math.floorDiv(nanos, NANOS), Math.floorMod(nanos, NANOS)));
  }

  private long read() {
    int year = digits(4);
    expect("-");
    int month = digits(2);
    expect("-");
    int day = digits(2);
    expect("Tt ");
    int hour = digits(2);
    expect(":");
    int minute = digits(2);
    expect(":");
    int second = digits(2);
    int fraction = fraction();
    int offset = offsetSeconds();
    if (broken
        || at != text.length()
        || !isDate(year, month, day)
        || hour > 23
        || minute > 59
        || second > 60) {
      return NOT_A_TIME;
    }
    long seconds =
        LocalDate.of(year, month, day).toEpochDay() * 86_400L
            + hour * 3_600L
            + minute * 60L
            + second
            - offset;
    return seconds < 0 || seconds > LAST_SECOND ? OUT_OF_RANGE : seconds * NANOS + fraction;
  }

  private static boolean isDate(int year, int month, int day) {
    return month >= 1
        && month <= 12
        && day >= 1
        && day <= Month.of(month).length(IsoChronology.INSTANCE.isLeapYear(year));
  }

  private int digits(int count) {
    int value = 0;
    for (int i = 0; i < count; i++) {
      char c = next();
      broken |= !isDigit(c);
      value = value * 10 + c - '0';
    }
    return value;
  }

  private int fraction() {
    if (peek() != '.' && peek() != ',') {
      return 0;
    }
    at++;
    broken |= !isDigit(peek());
    int nanos = 0;
    int weight = (int) NANOS;
    while (isDigit(peek())) {
      weight /= 10;
      nanos += (next() - '0') * weight;
    }
    return nanos;
  }

  private int offsetSeconds() {
    char sign = next();
    if (sign == 'Z' || sign == 'z') {
      return 0;
    }
    broken |= sign != '+' && sign != '-';
    int hours = digits(2);
    if (peek() == ':') {
      at++;
      broken |= at == text.length();
    }
    int minutes = at < text.length() ? digits(2) : 0;
    broken |= hours > 23 || minutes > 59;
    int seconds = hours * 3_600 + minutes * 60;
    return sign == '-' ? -seconds : seconds;
  }

  private void expect(String anyOf) {
    broken |= anyOf.indexOf(next()) < 0;
  }

  private char next() {
    char c = peek();
    at++;
    return c;
  }

  private char peek() {
    return at < text.length() ? text.charAt(at) : '\0';
  }

  private static boolean isDigit(char c) {
    return c >= '0' && c <= '9';
  }
}
