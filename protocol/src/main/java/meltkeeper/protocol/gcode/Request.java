package meltkeeper.protocol.gcode;

import java.nio.charset.StandardCharsets;

/**
 * A line that we may send to a printer. The list is closed: all of them ask for a report, none of
 * them moves, heats or changes anything. Codes as in the RepRap dialect (common practice, no
 * source).
 */
public sealed interface Request {

  /** The longest period that {@link ReportEvery} may ask for, in seconds. */
  int LONGEST_PERIOD_SECONDS = 60;

  /** The command word alone, {@code M105}. */
  String code();

  /** The line as sent, without its end. */
  String text();

  /** The line as sent, its line feed included; a new array each time. */
  default byte[] bytes() {
    return (text() + "\n").getBytes(StandardCharsets.US_ASCII);
  }

  /** Asks for one report. */
  enum Once implements Request {
    /** Temperatures, targets and duties. */
    TEMPERATURES("M105"),
    /** How far the job from the printer's own storage has come. */
    PROGRESS("M27"),
    /** Where the axes stand, the filament's among them. */
    POSITION("M114");

    private final String code;

    Once(String code) {
      this.code = code;
    }

    @Override
    public String code() {
      return code;
    }

    @Override
    public String text() {
      return code;
    }
  }

  /**
   * Asks for temperatures again and again, unasked; not every printer can.
   *
   * @param seconds the period, 1 to 60; 0 ends it
   */
  record ReportEvery(int seconds) implements Request {

    public ReportEvery {
      if (seconds < 0 || seconds > LONGEST_PERIOD_SECONDS) {
        throw new IllegalArgumentException(
            seconds + " s is not a period of reports; allowed: 0 to " + LONGEST_PERIOD_SECONDS);
      }
    }

    @Override
    public String code() {
      return "M155";
    }

    @Override
    public String text() {
      return "M155 S" + seconds;
    }
  }
}
