package meltkeeper.protocol.gcode;

import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import meltkeeper.protocol.Payload;

/**
 * A line that we may send to a printer. The list is closed: all of them ask for a report, and none
 * of them moves, heats or changes anything, but for {@link Ordered}, which the owner alone can
 * write. Codes as in the RepRap dialect (common practice, no source).
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

  /**
   * A line of the owner's own, sent when a hot end has stalled and the owner wants it so.
   *
   * @param text a command without line number, checksum and comment, which heats nothing
   */
  record Ordered(String text) implements Request {

    /** What a line may be, in words that follow "allowed:". */
    public static final String ALLOWED =
        "a command such as M25, up to 90 characters, without line number, checksum or comment,"
            + " that heats nothing";

    private static final int LONGEST = 90;

    /** Common practice, no source: what sets a heater's target, or waits for it. */
    private static final Set<Integer> TARGETS = Set.of(104, 109, 140, 141, 190, 191);

    private static final int TUNE_A_HEATER = 303;

    public Ordered {
      if (!isAllowed(text)) {
        throw new IllegalArgumentException("\"" + text + "\" is no line; allowed: " + ALLOWED);
      }
    }

    /** The line of a text; empty for one that is not allowed. */
    public static Optional<Ordered> read(String text) {
      String line = text.strip();
      return isAllowed(line) ? Optional.of(new Ordered(line)) : Optional.empty();
    }

    private static boolean isAllowed(String text) {
      return text.length() <= LONGEST
          && text.matches("[A-Za-z][ -~&&[^;*()]]*")
          && CommandScan.of(Payload.of(text))
              .fold(
                  line ->
                      !line.isEmpty()
                          && line.lineNumber().isEmpty()
                          && line.words().stream().noneMatch(word -> heats(line, word)),
                  rejected -> false);
    }

    private static boolean heats(CommandLine line, Word word) {
      int code = word.tenths() / 10;
      boolean asksForHeat = line.number('S').orElse(0) > 0 || line.number('R').orElse(0) > 0;
      return word.letter() == 'M'
          && (code == TUNE_A_HEATER || (TARGETS.contains(code) && asksForHeat));
    }

    @Override
    public String code() {
      return text.split("\\s", 2)[0].toUpperCase(Locale.ROOT);
    }
  }
}
