package meltkeeper.protocol.mapping;

/** Reads a printer's time; the two ways in which it can fail are negative, as no time here is. */
final class Timestamps {

  /** Instead of a time: the text is none of the format. */
  static final long NOT_A_TIME = -1;

  /** Instead of a time: before 1970, or beyond what nanoseconds in a {@code long} can hold. */
  static final long OUT_OF_RANGE = -2;

  private Timestamps() {}

  /** Nanoseconds since 1970-01-01T00:00:00Z, or one of the two constants; never throws. */
  static long nanos(TimeFormat format, String text) {
    return switch (format) {
      case ISO -> IsoTime.nanos(text);
      case EPOCH_SECONDS -> EpochTime.nanos(text, 9);
      case EPOCH_MILLIS -> EpochTime.nanos(text, 6);
    };
  }
}
