package meltkeeper.protocol.mapping;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;
import meltkeeper.protocol.IsoTime;

/** How a printer writes a time. */
public enum TimeFormat {
  /** ISO 8601 with {@code Z} or an offset, as {@code 2026-03-02T09:00:00.125+01:00}. */
  ISO(IsoTime.ALLOWED),
  /** Seconds since 1970-01-01T00:00:00Z, with or without a fraction. */
  EPOCH_SECONDS("seconds since 1970, up to 2262"),
  /** Milliseconds since 1970-01-01T00:00:00Z, with or without a fraction. */
  EPOCH_MILLIS("milliseconds since 1970, up to 2262");

  private final String allowed;

  TimeFormat(String allowed) {
    this.allowed = allowed;
  }

  /** The values allowed, in words. */
  public String allowed() {
    return allowed;
  }

  /** The name in configurations: {@code iso}, {@code epoch-seconds}, {@code epoch-millis}. */
  public String label() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  /** The format of that label. */
  public static Optional<TimeFormat> ofLabel(String label) {
    return Arrays.stream(values()).filter(f -> f.label().equals(label)).findFirst();
  }

  /**
   * Nanoseconds since 1970-01-01T00:00:00Z, what is finer cut off; never throws.
   *
   * @return 0 or more, or {@link IsoTime#NOT_A_TIME} or {@link IsoTime#OUT_OF_RANGE}
   */
  long nanos(String text) {
    return switch (this) {
      case ISO -> IsoTime.nanos(text);
      case EPOCH_SECONDS -> EpochTime.nanos(text, 9);
      case EPOCH_MILLIS -> EpochTime.nanos(text, 6);
    };
  }
}
